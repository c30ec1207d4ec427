package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class NamesPageTest {
  @Test
  void the_page_on_names_shows_what_the_program_knows() throws IOException {
    String page = Files.readString(NamesPage.FILE);

    assertThat(page).isEqualTo(NamesPage.withTables(page));
    assertThat(page).contains("| `7#9` | 1 3 5 b7 #9 | C E G Bb D# |");
  }
}

package hingetone.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PhrasesPageTest {
  @Test
  void the_page_lists_the_keys_that_the_reader_takes() throws IOException {
    String page = Files.readString(PhrasesPage.FILE);

    assertThat(page).isEqualTo(PhrasesPage.withTable(page));
    for (PhraseKey key : PhraseKey.values()) {
      assertThat(page).contains("| `" + key.word() + "` |");
    }
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "STATEMENTS")
  void the_example_of_every_key_is_read(PhraseKey key) {
    String meter = key == PhraseKey.METER ? "" : "    meter: 4/4\n";
    String notes = key == PhraseKey.NOTES ? "" : "    notes: '| C4q Eb4q'\n";
    String line = key.word() + ": " + key.example() + "\n";
    String own = key == PhraseKey.ABOUT ? "" : "    " + line;
    String home = key == PhraseKey.KEY ? "" : "    key: C minor\n";
    String file =
        (key == PhraseKey.ABOUT ? line : "")
            + "statements:\n  gate:\n"
            + own
            + home
            + meter
            + notes;
    assertThat(PhraseReader.read(new Source("example", file)).problems()).as(file).isEmpty();
  }
}

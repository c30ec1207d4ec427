package hingetone.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.text.reading.TextFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class FileNamesTest {
  /** A byte that is no UTF-8, as an old Latin-1 file has it in its name. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void a_name_that_is_no_text_in_this_locale_still_leads_to_its_file(@TempDir Path folder)
      throws IOException {
    String latin = FileNames.text("caf\u00e9 1.yaml".getBytes(StandardCharsets.ISO_8859_1));
    Path file = FileNames.path(folder + "/" + latin);
    Files.writeString(file, "title: x");
    assertThat(file.toUri().toString()).endsWith("/caf%E9%201.yaml");
    assertThat(FileNames.path(folder + "/" + latin)).exists();
    assertThat(TextFile.read(folder + "/" + latin).value()).isPresent();
  }

  @Test
  void an_ordinary_name_is_an_ordinary_path_and_a_zero_byte_is_none() {
    assertThat(FileNames.path("charts/caf\u00e9.yaml")).isEqualTo(Path.of("charts/caf\u00e9.yaml"));
    assertThatThrownBy(() -> FileNames.path("a\0b")).isInstanceOf(InvalidPathException.class);
  }

  @Test
  void words_that_lost_nothing_are_left_alone() {
    String[] args = {"check", "caf\u00e9.yaml"};
    assertThat(FileNames.words(args)).isSameAs(args);
  }
}

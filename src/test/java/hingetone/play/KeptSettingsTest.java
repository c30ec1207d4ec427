package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.screen.ViewSettings;
import hingetone.text.OddFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(20)
class KeptSettingsTest {
  private static final ViewSettings FAR = ViewSettings.USUAL.withFar(true);

  @TempDir Path folder;

  private KeptSettings settings() {
    return new KeptSettings(folder);
  }

  @Test
  void what_is_kept_is_read_again_also_from_a_folder_that_was_not_there() throws IOException {
    KeptSettings settings = new KeptSettings(folder.resolve("a/b"));
    assertThat(settings.read()).isEqualTo(ViewSettings.USUAL);
    settings.keep(FAR);
    assertThat(settings.read()).isEqualTo(FAR);
  }

  @Test
  void a_pipe_is_not_waited_for_nor_replaced() throws Exception {
    OddFiles.pipe(folder.resolve("screen"));
    assertLeftAlone();
  }

  @Test
  void a_huge_file_is_not_read_nor_replaced() throws IOException {
    Path file = OddFiles.huge(folder.resolve("screen"));
    assertLeftAlone();
    assertThat(file).hasSize(3L << 30);
  }

  @Test
  void a_file_in_another_encoding_is_not_lost() throws IOException {
    Path file = folder.resolve("screen");
    Files.write(file, "key \u00e9: far\n".getBytes(StandardCharsets.ISO_8859_1));
    assertLeftAlone();
    assertThat(file).hasSize(11);
  }

  private void assertLeftAlone() {
    assertThat(settings().read()).isEqualTo(ViewSettings.USUAL);
    assertThatThrownBy(() -> settings().keep(FAR))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("screen");
  }
}

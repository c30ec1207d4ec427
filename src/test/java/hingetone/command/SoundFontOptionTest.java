package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bank that is no use is refused before anything is written or shown. */
class SoundFontOptionTest extends ProgramRun {
  private static final String CHART = "demo-charts/mill-race.yaml";

  @TempDir Path folder;

  @Test
  void a_bank_that_cannot_be_played_is_wrong_input_for_every_command() throws Exception {
    Path bank = Files.writeString(folder.resolve("bank.sf2"), "");
    Path file = folder.resolve("song.wav");
    assertThat(run("render", CHART, "-o", file.toString(), "--soundfont", bank.toString()))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(run("play", CHART, "--plain", "--soundfont", bank.toString()))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    Path notes = folder.resolve("song.mid");
    assertThat(run("render", CHART, "-o", notes.toString(), "--soundfont", bank.toString()))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    String words = bank + " is empty; copy or download it again.";
    assertThat(err.toString().lines()).containsExactly(words, words, words);
    assertThat(out.toString()).isEmpty();
    assertThat(file).doesNotExist();
    assertThat(notes).doesNotExist();
  }

  @Test
  void a_bank_that_is_not_there_is_wrong_input() {
    Path bank = folder.resolve("none.sf2");
    assertThat(run("play", CHART, "--plain", "--soundfont", bank.toString()))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString())
        .contains("Cannot read the sound font " + bank + ": there is no such file.");
  }
}

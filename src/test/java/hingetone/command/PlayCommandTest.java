package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is wrong with the command line or the chart is said before anything plays. */
class PlayCommandTest extends ProgramRun {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --ramp 80:120            | "80:120" is no ramp: I expected FROM:TO:STEP:LAPS
          --ramp 80:fast:5:2       | "fast" is no tempo
          --ramp 80:120:0:2        | "0" is not possible: I expected a step from 1 to 100
          --channels bass=17       | "17" is not possible: I expected channels from 1 to 16
          --channels flute=2       | "flute" is no part: I expected drums, bass, chords, lead or click
          --banks bass=99999       | "99999" is not possible: I expected banks from 0 to 16383
          --latency -3             | "-3" is not possible: I expected milliseconds from 0 to 1000
          --sample-rate 8          | "8" is not possible: I expected frames a second from 22050
          --buffer 5               | "5" is not possible: I expected milliseconds from 10 to 2000
          --volume 101             | "101" is not possible: I expected a level from 0 to 100
          --soundfont none.sf2     | none.sf2: there is no such file
          --soundfont grooves      | Cannot read the sound font grooves: it is no file
          --seed x                 | "x" is no seed: I expected a whole number of at most 18 digits
          --laps 0                 | "0" is not possible: I expected laps from 1
          --show-me=nothing        | "nothing": I expected all
          --out Nowhere            | There is no MIDI output on this machine.
          --in Nowhere             | There is no MIDI input on this machine.
          """)
  void a_wrong_option_is_explained(String options, String words) {
    String[] args = ("play demo-charts/lantern-quay.yaml --plain " + options).split(" +");
    assertThat(run(args)).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains(words).doesNotContain("\tat ");
  }

  @Test
  void an_option_that_may_stand_alone_leaves_the_chart_behind_it_alone() {
    assertThat(run("play", "--plain", "--show-me", "no-such.yaml"))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("no-such.yaml: there is no such file");
  }

  @Test
  void the_help_and_the_page_on_sound_tell_the_same_volume_to_begin_with() throws IOException {
    assertThat(run("play", "--help")).isEqualTo(ExitStatus.FINE);
    String help = out.toString().replaceAll("\\s+", " ");
    String volume = help.replaceAll(".*The level to begin with \\((\\d+)\\).*", "$1");
    String page = Files.readString(Path.of("src/docs/sound.md")).replaceAll("\\s+", " ");
    assertThat(page).contains("starts at " + volume + " of 100");
  }
}

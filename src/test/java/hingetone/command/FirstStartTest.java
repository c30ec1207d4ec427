package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import hingetone.sound.FakeSoundOutput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The program of somebody who has never started it. */
@Timeout(120)
class FirstStartTest {
  private static final String CHART =
      """
      tempo: 400
      sections:
        one: {key: G minor, bars: '| Gm7 | Cm7 |'}
      """;

  @TempDir Path home;
  @TempDir Path temporary;
  @TempDir Path work;

  /** The program, on a machine with a sound output. */
  private static final class WithSound {
    public static void main(String[] args) {
      FakeSoundOutput.plugIn(FakeSoundOutput.Pace.FREE);
      Main.main(args);
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).map(folder::relativize).toList();
    }
  }

  @Test
  void playing_leaves_nothing_in_a_new_home_but_what_is_our_own() throws Exception {
    Path chart = Files.writeString(work.resolve("chart.yaml"), CHART);
    StartedProgram.Run run =
        new StartedProgram(home, temporary)
            .run(WithSound.class, "play", "--plain", "--laps", "1", chart.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.status()).isEqualTo(ExitStatus.FINE);
    assertThat(run.out()).contains("Lap 1 of 1").doesNotContain("no sound");
    assertThat(files(home)).allMatch(file -> file.getParent().endsWith("hingetone"));
    assertThat(files(temporary)).isEmpty();
  }
}

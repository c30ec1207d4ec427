package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The take is the one beside the tests, composed for them. */
class ReviewCommandTest extends ProgramRun {
  private static final String TAKE = "src/test/resources/takes/evening.mid";

  @TempDir Path folder;

  private Path file(String name) {
    return folder.resolve(name);
  }

  @Test
  void marks_are_written_as_a_start_and_read_again() throws IOException {
    String marks = file("marks.yaml").toString();
    assertThat(run("review", TAKE, "--marks-out", marks)).isZero();
    assertThat(run("review", TAKE, "--marks-out", marks)).isZero();

    String edited = Files.readString(file("marks.yaml")).replaceFirst("role: \\w+", "role: other");
    Files.writeString(file("marks.yaml"), edited);
    assertThat(run("review", TAKE, "--marks-out", marks)).isEqualTo(2);
    assertThat(err.toString()).contains("was changed after hingetone wrote it");
    assertThat(run("review", TAKE, "--marks", marks)).isZero();
    assertThat(out.toString()).contains("a figure on its own");

    Files.writeString(file("marks.yaml"), "phrases:\n  - from: bar 99 beat 1\n");
    assertThat(run("review", TAKE, "--marks", marks)).isEqualTo(2);
    assertThat(err.toString()).contains("marks.yaml:2:11").contains("no note begins");
  }
}

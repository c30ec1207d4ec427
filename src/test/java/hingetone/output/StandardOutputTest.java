package hingetone.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hingetone.command.ChildProgram;
import hingetone.command.Commands;
import hingetone.command.Main;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** A full disk and a reader that has gone, for every command. */
@Timeout(60)
class StandardOutputTest {
  private static final String CHART = "demo-charts/mill-race.yaml";
  private static final String SOUND = "src/test/resources/sounds/four-notes.flac";

  /** A line for each command that prints something; a new command must say what it prints. */
  private static final Map<String, String> PRINTING =
      Map.ofEntries(
          Map.entry("play", "play --plain --laps 1 --tempo 400 " + CHART),
          Map.entry("render", "render --force -o src/target/printed.mid " + CHART),
          Map.entry("check", "check -v " + CHART),
          Map.entry("map", "map " + CHART),
          Map.entry("plan", "plan " + CHART),
          Map.entry("grooves", "grooves"),
          Map.entry("review", "review src/test/resources/takes/evening.mid"),
          Map.entry("takes", "takes"),
          Map.entry("log", "log"),
          Map.entry("listen", "listen --help"), // there is no input here
          Map.entry("drill", "drill landing --plain --minutes 1 --tempo 400 " + CHART),
          Map.entry("transcribe", "transcribe --json " + SOUND),
          Map.entry("ports", "ports"),
          Map.entry("completion", "completion"),
          Map.entry("manual", "manual"));

  private final StringWriter err = new StringWriter();
  private final InputStream in = System.in;

  /** play reads keys from it, which here are the build's own. */
  @BeforeEach
  void nobodyTypes() {
    System.setIn(InputStream.nullInputStream());
  }

  @AfterEach
  void giveBackTheInput() {
    System.setIn(in);
  }

  static Stream<String> everyCommand() {
    assertThat(PRINTING).containsOnlyKeys(Commands.names());
    return Stream.concat(
        Stream.of("", "--help", "--version"),
        PRINTING.entrySet().stream()
            .flatMap(command -> Stream.of(command.getValue(), command.getKey() + " --help")));
  }

  @ParameterizedTest
  @MethodSource("everyCommand")
  void output_that_cannot_be_written_is_one_line_and_status_one(String words) {
    assertThat(run(words, new StandardOutput(new Full(), () -> false)))
        .isEqualTo(ExitStatus.FAILED);
    assertThat(err.toString()).isEqualTo("Cannot write to standard output: the disk is full\n");
  }

  @ParameterizedTest
  @MethodSource("everyCommand")
  void a_reader_that_has_gone_ends_it_quietly(String words) {
    assertThat(run(words, new StandardOutput(new Full(), () -> true))).isEqualTo(ExitStatus.FAILED);
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void the_program_itself_finds_a_full_device_and_a_pipe_without_a_reader() throws Exception {
    File full = new File("/dev/full");
    assumeTrue(full.exists(), "this system has no full device");
    Process onFull = started(ProcessBuilder.Redirect.to(full));
    Process onPipe = started(ProcessBuilder.Redirect.PIPE);
    onPipe.getInputStream().close();
    assertThat(errorsOf(onFull)).hasSize(1);
    assertThat(onFull.waitFor()).isEqualTo(ExitStatus.FAILED);
    assertThat(errorsOf(onPipe)).isEmpty();
    assertThat(onPipe.waitFor()).isEqualTo(ExitStatus.FAILED);
  }

  private static Process started(ProcessBuilder.Redirect out) throws IOException {
    List<String> command = new ArrayList<>(ChildProgram.COMMAND);
    command.add("completion");
    return new ProcessBuilder(command).redirectOutput(out).start();
  }

  private static List<String> errorsOf(Process program) throws IOException {
    String errors = new String(program.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    return errors.lines().toList();
  }

  private int run(String words, OutputStream out) {
    String[] args = words.isEmpty() ? new String[0] : words.split(" ");
    CommandLine line = Main.commandLine(args);
    line.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(err, true));
    return line.execute(args);
  }

  /** Takes nothing. */
  private static final class Full extends OutputStream {
    @Override
    public void write(int oneByte) throws IOException {
      throw new IOException("the disk is full");
    }
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import hingetone.output.ExitStatus;
import hingetone.output.Export;
import hingetone.text.OddFiles;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a render goes, and what it never takes the place of. */
@Timeout(60)
class RenderCommandTest extends ProgramRun {
  private static final String CHART =
      """
      title: Ferry bell
      groove: steps.txt
      sections:
        one: {key: G minor, bars: '| Gm7 | D7 |', phrases: 'statement 2'}
        two: {key: Bb minor, bars: '| Bbm7 | F7 |', phrases: 'reply 2'}
      """;

  @TempDir Path folder;

  private Path chart;

  @BeforeEach
  void aChartWithAGrooveBesideIt() throws IOException {
    chart = Files.writeString(folder.resolve("song.txt"), CHART);
    Files.copy(Path.of("grooves/plain.yaml"), folder.resolve("steps.txt"));
  }

  private int render(String output, String... options) {
    List<String> args = new ArrayList<>(List.of("render", chart.toString()));
    args.addAll(List.of("-o", folder.resolve(output).toString()));
    args.addAll(List.of(options));
    return run(args.toArray(new String[0]));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"song.txt", "./song.txt", "link.txt", "hard.txt", "steps.txt", "bank.wav"})
  void what_it_reads_is_never_replaced_whatever_name_leads_there(String output) throws IOException {
    Files.createSymbolicLink(folder.resolve("link.txt"), Path.of("song.txt"));
    Files.createLink(folder.resolve("hard.txt"), chart);
    Path bank = Files.writeString(folder.resolve("bank.wav"), "sounds");
    List<String> before = names();
    assertThat(render(output, "--force", "--soundfont", bank.toString()))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString())
        .isEqualTo(
            folder.resolve(output)
                + " is what this command reads, which is never replaced; give another name.\n");
    assertThat(chart).hasContent(CHART);
    assertThat(folder.resolve("steps.txt")).hasSameBinaryContentAs(Path.of("grooves/plain.yaml"));
    assertThat(bank).hasContent("sounds");
    assertThat(names()).isEqualTo(before);
  }

  @Test
  void a_chart_is_not_replaced_under_another_case_where_that_is_the_same_file() {
    assumeTrue(Files.exists(folder.resolve("SONG.TXT")), "this file system tells cases apart");
    assertThat(render("SONG.TXT", "--force")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(chart).hasContent(CHART);
  }

  @Test
  void a_file_that_is_not_ours_asks_for_force() throws IOException {
    Path file = Files.writeString(folder.resolve("out.mid"), "a song of my own");
    assertThat(render("out.mid")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString())
        .isEqualTo(
            file
                + " is there already, and hingetone did not write it: give another name, or"
                + " --force to replace it.\n");
    assertThat(file).hasContent("a song of my own");
    assertThat(render("out.mid", "--force")).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).isEqualTo(file + ": 4 parts, in place of what was there\n");
    assertThat(Files.readAllBytes(file)).startsWith('M', 'T', 'h', 'd');
  }

  @ParameterizedTest
  @CsvSource({"mid, 4 parts", "musicxml, 4 bars", "txt, 4 bars"})
  void an_earlier_export_is_replaced_and_that_is_said_unless_somebody_changed_it(
      String kind, String holds) throws IOException {
    String name = "out." + kind;
    Path file = folder.resolve(name);
    assertThat(render(name)).isEqualTo(ExitStatus.FINE);
    assertThat(render(name, "--seed", "2")).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString())
        .isEqualTo(
            file + ": " + holds + "\n" + file + ": " + holds + ", in place of an earlier export\n");
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 1;
    Files.write(file, bytes);
    assertThat(render(name)).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("was changed after hingetone wrote it");
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
  }

  @Test
  void an_export_of_another_kind_asks_for_force_and_an_empty_file_does_not() throws IOException {
    render("out.musicxml");
    Files.move(folder.resolve("out.musicxml"), folder.resolve("out.txt"));
    assertThat(render("out.txt")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("holds another kind of export");
    Files.createFile(folder.resolve("empty.mid"));
    assertThat(render("empty.mid")).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).endsWith("empty.mid: 4 parts\n");
  }

  @Test
  void one_stem_that_must_not_be_replaced_stops_the_whole() throws IOException {
    Path bass = Files.writeString(folder.resolve("out-bass.wav"), "my own bass");
    List<String> before = names();
    assertThat(render("out.wav", "--stems")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).startsWith(bass + " is there already");
    assertThat(bass).hasContent("my own bass");
    assertThat(names()).isEqualTo(before);
  }

  @Test
  void the_root_is_a_folder_for_stems_too() {
    String root = folder.getRoot().toString();
    assertThat(render(root, "--stems", "--as", "wav")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).startsWith(root + " is a folder; give the name of a file.");
  }

  @Test
  void two_outputs_do_not_go_into_one_file() throws IOException {
    Files.createSymbolicLink(folder.resolve("out-bass.wav"), Path.of("out.wav"));
    assertThat(render("out.wav", "--stems")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).startsWith("Cannot write two files into one, ");
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void a_mode_is_kept_and_links_are_followed_also_to_a_file_still_to_come() throws IOException {
    Path target = Files.createDirectory(folder.resolve("elsewhere")).resolve("real.mid");
    Path link = Files.createSymbolicLink(folder.resolve("out.mid"), Path.of("elsewhere/real.mid"));
    assertThat(render("out.mid")).isEqualTo(ExitStatus.FINE);
    assertThat(link).isSymbolicLink();
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rw-rw----"));
    byte[] first = Files.readAllBytes(target);
    assertThat(render("out.mid", "--seed", "2")).isEqualTo(ExitStatus.FINE);
    assertThat(link).isSymbolicLink();
    assertThat(Files.readAllBytes(target)).isNotEqualTo(first);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(target)))
        .isEqualTo("rw-rw----");
  }

  @Test
  void a_pipe_is_written_to_and_stays_a_pipe() throws Exception {
    Path pipe = OddFiles.pipe(folder.resolve("pipe"));
    CompletableFuture<byte[]> read = CompletableFuture.supplyAsync(() -> bytes(pipe));
    assertThat(render("pipe", "--as", "mid")).isEqualTo(ExitStatus.FINE);
    assertThat(read.get()).startsWith('M', 'T', 'h', 'd');
    assertThat(Export.isStream(pipe)).isTrue();
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void a_full_device_is_told_in_a_line() {
    assertThat(render("/dev/full", "--as", "mid")).isEqualTo(ExitStatus.FAILED);
    assertThat(err.toString()).matches("Cannot write /dev/full: .+\n");
  }

  @Test
  void standard_output_gets_the_bytes_of_the_file_and_nothing_else() throws Exception {
    render("out.mid");
    List<String> command = new ArrayList<>(ChildProgram.COMMAND);
    command.addAll(List.of("render", "-", "--groove", folder + "/steps.txt"));
    command.addAll(List.of("-o", "-", "--as", "mid"));
    Process program = new ProcessBuilder(command).redirectInput(chart.toFile()).start();
    assertThat(program.getInputStream().readAllBytes())
        .isEqualTo(Files.readAllBytes(folder.resolve("out.mid")));
    assertThat(new String(program.getErrorStream().readAllBytes(), StandardCharsets.UTF_8))
        .isEqualTo("standard output: 4 parts\n");
    assertThat(program.waitFor()).isEqualTo(ExitStatus.FINE);
  }

  @Test
  void a_chart_on_standard_input_is_not_replaced_either() throws Exception {
    List<String> command = new ArrayList<>(ChildProgram.COMMAND);
    command.addAll(List.of("render", "-", "-o", chart.toString(), "--force"));
    Process program = new ProcessBuilder(command).redirectInput(chart.toFile()).start();
    assertThat(new String(program.getErrorStream().readAllBytes(), StandardCharsets.UTF_8))
        .contains("is what this command reads");
    assertThat(program.waitFor()).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(chart).hasContent(CHART);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          -           |              | Say with --as what to write to standard output: mid, wav
          x.midi      |              | x.midi has no ending I can write: I know .mid, .wav
          x.midi      |              | Did you mean .mid?
          mid         |              | mid has no ending I can write
          x.mid       | --as wav     | x.mid ends in .mid, but --as says wav.
          x.mid       | --as midi    | "midi" is no kind: I expected mid, wav, musicxml, txt. Did you
          x.mid       | --stems      | --stems goes with a .wav file.
          -           | --as wav --stems | --stems goes with a .wav file.
          """)
  void a_kind_that_is_not_clear_is_asked_for(String file, String options, String words) {
    String given = "render demo-charts/mill-race.yaml -o " + file + " ";
    assertThat(run((given + (options == null ? "" : options)).trim().split(" +")))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains(words);
  }

  @Test
  void a_folder_and_a_folder_that_is_not_there_are_told() {
    assertThat(render("nowhere/out.mid")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("out.mid: there is no folder " + folder);
    assertThat(render(".", "--as", "mid")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains(" is a folder; give the name of a file.");
  }
}

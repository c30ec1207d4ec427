package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import hingetone.sound.TinySoundFont;
import hingetone.sound.TinySoundFont.Zone;
import hingetone.text.OddFiles;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program in processes of other locales; on Linux, where names of files are bytes. */
@Timeout(60)
@EnabledOnOs(OS.LINUX)
class LocaleTest {
  private static final String CHART =
      """
      title: Gr\u00fcne Stra\u00dfe
      groove: b\u00fchne.yaml
      sections:
        one: {key: C minor, bars: '| Cm7 | G7 |', phrases: 'statement 2'}
        two: {groove: my-own, key: Eb minor, bars: '| Ebm7 | Bb7 |', phrases: 'reply 2'}
      """;

  @TempDir Path home;

  private Path folder;
  private Path own;

  @BeforeEach
  void aFolderWithAnUmlaut() throws IOException {
    folder = Files.createDirectory(home.resolve("m\u00fcsik"));
    Files.writeString(folder.resolve("stra\u00dfe.yaml"), CHART);
    Path groove = Path.of("grooves/plain.yaml");
    Files.copy(groove, folder.resolve("b\u00fchne.yaml"));
    own = Files.createDirectories(home.resolve("\u00fcbungen/hingetone/grooves"));
    Files.copy(groove, own.resolve("my-own.yaml"));
  }

  /** What came of a run. */
  private record Run(int status, byte[] out, byte[] err) {
    String out(Charset charset) {
      return new String(out, charset);
    }
  }

  private Run run(String locale, String... args) throws Exception {
    List<String> command = new ArrayList<>(ChildProgram.COMMAND);
    command.addAll(List.of(args));
    ProcessBuilder program = new ProcessBuilder(command).directory(folder.toFile());
    Map<String, String> environment = program.environment();
    environment.keySet().removeAll(List.of("LANG", "LC_CTYPE"));
    environment.put("LC_ALL", locale);
    environment.put("XDG_DATA_HOME", home.resolve("\u00fcbungen").toString());
    Process process = program.start();
    byte[] out = process.getInputStream().readAllBytes();
    byte[] err = process.getErrorStream().readAllBytes();
    return new Run(process.waitFor(), out, err);
  }

  @Test
  void in_a_locale_of_ascii_files_of_any_name_are_read_and_written() throws Exception {
    Run run = run("C", "render", "stra\u00dfe.yaml", "-o", "stra\u00dfe.mid");
    assertThat(run.err()).asString().isEmpty();
    assertThat(run.out(StandardCharsets.US_ASCII)).endsWith("stra??e.mid: 4 parts\n");
    assertThat(folder.resolve("stra\u00dfe.mid")).exists();
  }

  @Test
  void in_a_locale_of_ascii_a_bank_and_a_recording_of_any_name_are_read() throws Exception {
    Files.write(folder.resolve("b\u00e4nke.sf2"), TinySoundFont.of(Zone.of(128, 0)).bytes());
    Run render =
        run("C", "render", "stra\u00dfe.yaml", "-o", "\u00fc.wav", "--soundfont", "b\u00e4nke.sf2");
    assertThat(render.status()).isZero();
    assertThat(render.out(StandardCharsets.US_ASCII)).endsWith("sounds of b??nke.sf2\n");
    Run heard = run("C", "transcribe", "\u00fc.wav", "--json");
    assertThat(heard.err()).asString().doesNotContain("cannot be read");
    assertThat(heard.out(StandardCharsets.US_ASCII)).startsWith("{");
  }

  @Test
  void a_bank_that_would_be_played_without_being_named_is_never_written_over() throws Exception {
    Path banks = Files.createDirectories(home.resolve("\u00fcbungen/soundfonts"));
    Path bank = Files.write(banks.resolve("own-gm.sf2"), new byte[1_000_000]);
    Run run =
        run("C", "render", "stra\u00dfe.yaml", "-o", bank.toString(), "--as", "wav", "--force");
    assertThat(run.status()).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(bank).hasSize(1_000_000);
  }

  @Test
  void what_the_locale_cannot_say_is_a_question_mark_and_pictures_are_drawn_in_ascii()
      throws Exception {
    Run run = run("POSIX", "map", "stra\u00dfe.yaml");
    assertThat(run.status()).isZero();
    assertThat(run.out(StandardCharsets.ISO_8859_1)).matches("\\p{ASCII}*");
    assertThat(run.out(StandardCharsets.US_ASCII)).contains("Gr?ne Stra?e", "--@1---|");
  }

  @Test
  void a_latin_locale_gets_latin_letters_and_a_missing_file_is_just_that() throws Exception {
    Run run = run("de_DE.ISO-8859-1", "check", "-v", "stra\u00dfe.yaml", "n\u00f6.yaml");
    assertThat(run.status()).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(run.out(StandardCharsets.ISO_8859_1))
        .contains("\"Gr\u00fcne Stra\u00dfe\", 4 bars", "n\u00f6.yaml: there is no such file");
  }

  @Test
  void a_folder_of_grooves_that_cannot_be_opened_is_named() throws Exception {
    Files.delete(own.resolve("my-own.yaml"));
    Files.delete(own);
    OddFiles.closedFolder(own);
    Run run = run("C.UTF-8", "grooves");
    assertThat(run.status()).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(run.err())
        .asString(StandardCharsets.UTF_8)
        .isEqualTo("Cannot read the folder " + own + ": may you open it?\n");
  }
}

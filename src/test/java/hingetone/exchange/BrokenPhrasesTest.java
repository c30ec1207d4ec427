package hingetone.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.Diagnostic;
import hingetone.text.Reading;
import hingetone.text.TextFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every {@code NAME.yaml} in {@code src/test/resources/broken-phrases} must give exactly the report
 * in {@code NAME.report}. After a change of wording, run {@link #main} and read every difference.
 */
class BrokenPhrasesTest {
  private static final Path FOLDER = Path.of("src/test/resources/broken-phrases");

  @TestFactory
  Stream<DynamicTest> each_broken_file_gives_its_report() throws IOException {
    return files().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> assertThat(report(file)).isEqualTo(Files.readString(reportOf(file)))));
  }

  @Test
  void there_are_at_least_fifteen_and_each_has_a_problem() throws IOException {
    assertThat(files()).hasSizeGreaterThanOrEqualTo(15);
    for (Path file : files()) {
      assertThat(reportOf(file)).isNotEmptyFile();
    }
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  private static Path reportOf(Path file) {
    return Path.of(file.toString().replace(".yaml", ".report"));
  }

  private static String report(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      Reading<List<Statement>> reading =
          TextFile.read(file.getFileName().toString(), in).then(PhraseReader::read);
      return reading.problems().stream().map(Diagnostic::report).collect(Collectors.joining("\n"));
    }
  }

  /** Writes the reports anew. */
  public static void main(String[] args) throws IOException {
    for (Path file : files()) {
      Files.writeString(reportOf(file), report(file));
    }
  }
}

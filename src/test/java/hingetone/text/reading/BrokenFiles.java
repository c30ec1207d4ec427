package hingetone.text.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;

/**
 * A folder of broken files: every {@code NAME.yaml} must give exactly the report in {@code
 * NAME.report}. After a change of wording, {@link #writeReports} and read every difference.
 *
 * @param folder where they are
 * @param reader what reads them
 */
public record BrokenFiles(Path folder, Function<Source, ? extends Reading<?>> reader) {
  public BrokenFiles(String name, Function<Source, ? extends Reading<?>> reader) {
    this(Path.of("src/test/resources", name), reader);
  }

  /** A test for each file. */
  public Stream<DynamicTest> tests() throws IOException {
    return files().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () ->
                        assertThat(report(file))
                            .isNotEmpty()
                            .isEqualTo(Files.readString(reportOf(file)))));
  }

  /** The files, in order of their names. */
  public List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  /** Writes the reports anew. */
  public void writeReports() throws IOException {
    for (Path file : files()) {
      Files.writeString(reportOf(file), report(file));
    }
  }

  private static Path reportOf(Path file) {
    return Path.of(file.toString().replace(".yaml", ".report"));
  }

  private String report(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      Reading<Source> text = TextFile.read(file.getFileName().toString(), in);
      List<Diagnostic> problems =
          text.value().isPresent() ? reader.apply(text.value().get()).problems() : text.problems();
      return problems.stream().map(Diagnostic::report).collect(Collectors.joining("\n"));
    }
  }
}

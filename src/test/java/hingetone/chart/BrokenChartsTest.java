package hingetone.chart;

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
 * Every {@code NAME.yaml} in {@code src/test/resources/broken} must give exactly the report in
 * {@code NAME.report}. After a change of wording, run {@link #main} and read every difference.
 */
class BrokenChartsTest {
  private static final Path FOLDER = Path.of("src/test/resources/broken");

  @TestFactory
  Stream<DynamicTest> each_broken_chart_gives_its_report() throws IOException {
    return charts().stream()
        .map(
            chart ->
                DynamicTest.dynamicTest(
                    chart.getFileName().toString(),
                    () -> assertThat(report(chart)).isEqualTo(Files.readString(reportOf(chart)))));
  }

  @Test
  void there_are_at_least_eighty_and_each_has_a_problem() throws IOException {
    assertThat(charts()).hasSizeGreaterThanOrEqualTo(80);
    for (Path chart : charts()) {
      assertThat(reportOf(chart)).isNotEmptyFile();
    }
  }

  private static List<Path> charts() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  private static Path reportOf(Path chart) {
    return Path.of(chart.toString().replace(".yaml", ".report"));
  }

  private static String report(Path chart) throws IOException {
    try (InputStream in = Files.newInputStream(chart)) {
      Reading<Chart> reading =
          TextFile.read(chart.getFileName().toString(), in).then(ChartReader::read);
      return reading.problems().stream().map(Diagnostic::report).collect(Collectors.joining("\n"));
    }
  }

  /** Writes the reports anew. */
  public static void main(String[] args) throws IOException {
    for (Path chart : charts()) {
      Files.writeString(reportOf(chart), report(chart));
    }
  }
}

package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DemoChartsTest {
  @Test
  void every_demo_chart_is_read_without_a_problem() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("demo-charts"))) {
      List<Path> charts = files.toList();
      assertThat(charts).hasSizeGreaterThanOrEqualTo(3);
      for (Path chart : charts) {
        Reading<Chart> reading = ChartReader.readFile(chart.toString());
        assertThat(reading.problems()).extracting(Diagnostic::report).isEmpty();
      }
    }
  }

  @Test
  void each_demo_chart_shows_another_pair_of_keys() {
    assertThat(keys("lantern-quay")).containsExactly("G minor", "Bb minor");
    assertThat(keys("mill-race")).containsExactly("C mixolydian", "C mixolydian", "F major");
    assertThat(keys("slow-tide")).containsExactly("C# minor", "D minor");
  }

  @Test
  void their_forms_have_the_bars_that_one_counts_on_paper() {
    assertThat(Form.of(demo("lantern-quay")).bars()).hasSize(16);
    assertThat(Form.of(demo("mill-race")).bars()).hasSize(24);
    assertThat(Form.of(demo("slow-tide")).bars()).hasSize(16);
  }

  private static List<String> keys(String name) {
    return demo(name).form().stream().map(section -> section.key().toString()).toList();
  }

  private static Chart demo(String name) {
    return ChartReader.readFile("demo-charts/" + name + ".yaml").value().orElseThrow();
  }
}

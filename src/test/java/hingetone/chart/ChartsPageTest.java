package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.Page;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartsPageTest {
  static Stream<String> examples() throws IOException {
    return Page.examples(ChartsPage.FILE).stream();
  }

  static Stream<ChartKey> keysWithExamples() {
    return Arrays.stream(ChartKey.values()).filter(key -> !key.example().isEmpty());
  }

  @Test
  void the_page_lists_the_keys_that_the_reader_takes() throws IOException {
    String page = Files.readString(ChartsPage.FILE);

    assertThat(page).isEqualTo(ChartsPage.withTable(page));
    for (ChartKey key : ChartKey.values()) {
      assertThat(page).contains("| `" + key + "` |");
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void every_chart_on_the_page_is_read(String chart) {
    assertThat(ChartReader.read(new Source("charts.md", chart)).problems()).isEmpty();
  }

  @Test
  void there_are_charts_on_the_page() throws IOException {
    assertThat(Page.examples(ChartsPage.FILE)).hasSizeGreaterThanOrEqualTo(4);
  }

  @ParameterizedTest
  @MethodSource("keysWithExamples")
  void the_example_of_every_key_is_read(ChartKey key) {
    String value = key == ChartKey.BARS ? "|\n      " + key.example() : key.example();
    String line = key + ": " + value + "\n";
    String meter = key == ChartKey.GROUPING ? "meter: 7/8\n" : "";
    String rest =
        "sections:\n  low:\n    key: C minor\n"
            + "    bars: |\n      | Cm7 | F7 |\n  high:\n    key: F minor\n    bars: |\n"
            + "      | Fm7 |\n";
    String chart =
        switch (key.place()) {
          case CHART, BOTH -> meter + line + rest;
          case SECTION ->
              "sections:\n  low:\n    riff:\n      bass: C3w\n    key: C minor\n"
                  + "    bars: |\n      | Cm7 | F7 |\n  other:\n    "
                  + line
                  + (key == ChartKey.KEY ? "" : "    key: C major\n")
                  + (key == ChartKey.BARS ? "" : "    bars: |\n      | C | F |\n");
          case RIFF ->
              "sections:\n  low:\n    key: C minor\n    bars: |\n      | Cm7 | F7 |\n    riff:\n      "
                  + line;
        };
    assertThat(ChartReader.read(new Source("example", chart)).problems()).as(chart).isEmpty();
  }
}

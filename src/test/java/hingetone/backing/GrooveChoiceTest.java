package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Source;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A chart's grooves: found, or told about with what there is instead. */
class GrooveChoiceTest {
  private static String report(String head) {
    String text = head + "sections:\n  one:\n    key: C minor\n    bars: |\n      | Cm7 |\n";
    Source source = new Source("chart.yaml", text);
    Chart chart = ChartReader.read(source).value().orElseThrow();
    List<Diagnostic> problems = Backing.problems(chart, Grooves.builtIn(), source);
    return problems.stream().map(Diagnostic::report).collect(Collectors.joining("\n"));
  }

  @Test
  void a_meter_that_the_groove_lacks_is_told_with_the_grooves_that_have_it() {
    assertThat(report("meter: 7/8\ngroove: round-pond\n"))
        .isEqualTo(
            """
            chart.yaml:2:9: the groove "round-pond" is not drawn for 7/8
              |
            2 | groove: round-pond
              |         ^^^^^^^^^^
            It is drawn for 3/4. For 7/8 there are: crooked-mile, plain.
            """);
  }

  @Test
  void a_misspelt_groove_is_told_with_the_one_that_was_meant() {
    assertThat(report("groove: coal-trian\n"))
        .startsWith("chart.yaml:1:9: there is no groove \"coal-trian\"\n")
        .contains("tin-kettle", "Did you mean coal-train?");
  }

  @Test
  void a_groove_that_fits_has_no_problem() {
    assertThat(report("meter: 7/8\ngroove: crooked-mile\n")).isEmpty();
    assertThat(report("meter: 11/16\n")).isEmpty();
  }
}

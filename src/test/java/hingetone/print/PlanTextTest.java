package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.text.reading.Source;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class PlanTextTest {
  private static final String CHART =
      """
      title: Weir steps
      sections:
        low:
          key: D minor
          bars: |
            | Dm7 | Gm7 / A7 / | Dm7 | D7b9 |
          phrases: statement 2, reply 2
          leave: run
        high:
          key: G minor
          bars: |
            | Gm7 | Cm7 | N.C. | D7 |
          phrases: statement 1 again, reply 1, rest 1, statement 1
      form: low high
      """;

  private static String text(String yaml, int laps, Function<Prompt, List<String>> under) {
    Chart chart = ChartReader.read(new Source("chart", yaml)).value().orElseThrow();
    return PlanText.of(Plan.of(chart, Form.of(chart)), laps, under);
  }

  @Test
  void every_bar_has_its_chords_and_who_speaks_lands_and_stops_in_it() {
    assertThat(text(CHART, 1, prompt -> List.of()))
        .isEqualTo(
            """
                0  count-in           & of 3 statement 1
            low, D minor
                1  Dm7                1 land
                2  Gm7 / A7 /
                3  Dm7                1 stop; & of 1 reply 2 to 1; 3 land
                4  D7b9               3 stop; & of 3 statement 3, 1 again, new ending, run over the line
            high, G minor
                5  Gm7                1 land
                6  Cm7                1 stop; & of 1 reply 4 to 3; 3 land
                7  N.C.               1 stop; 1 rest; & of 3 statement 6
                8  D7                 1 land; 3 stop; & of 3 statement 7, hold over the line
            """);
  }

  @Test
  void bars_and_numbers_count_on_through_the_laps() {
    assertThat(text(CHART, 2, prompt -> List.of()).lines())
        .hasSize(1 + 2 * (1 + 2 + 8))
        .contains("lap 1", "lap 2", "    9  Dm7                1 land")
        .endsWith(
            "   16  D7                 1 land; 3 stop; & of 3 statement 13, run over the line");
  }

  @Test
  void what_stands_under_a_prompt_stands_under_the_bar_it_lands_in() {
    List<String> lines =
        text(CHART, 1, prompt -> List.of("notes of " + prompt.index(), "")).lines().toList();
    assertThat(lines)
        .containsSubsequence(
            "    1  Dm7                1 land",
            "       notes of 1",
            "",
            "    2  Gm7 / A7 /",
            "       notes of 6")
        .doesNotContain("       notes of 5", "       notes of 7");
  }
}

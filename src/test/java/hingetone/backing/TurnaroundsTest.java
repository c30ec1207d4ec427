package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.ChartReader;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The band thickens on the dominant bars that lead to a section's tonic. */
class TurnaroundsTest {
  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void a_turnaround_is_fuller_and_louder_than_the_bars_before(Groove groove) {
    double sum = 0;
    for (String name : BandMeasure.CHARTS) {
      Thickening thickening = Thickening.of(groove, name);
      assertThat(thickening.velocity()).as("velocity in " + name).isGreaterThan(1.05);
      assertThat(thickening.whole()).as("in all in " + name).isGreaterThan(1);
      sum += thickening.whole();
    }
    assertThat(sum / BandMeasure.CHARTS.size()).as("in all").isGreaterThan(1.1);
  }

  @Test
  void only_the_dominant_bars_before_a_tonic_turn_around() {
    assertThat(turnarounds("lantern-quay")).containsExactly(8, 16);
    assertThat(turnarounds("mill-race")).containsExactly(24);
    assertThat(turnarounds("slow-tide")).containsExactly(8, 16);
  }

  private static List<Integer> turnarounds(String chart) {
    Backing backing =
        Backing.of(
            ChartReader.readFile("demo-charts/" + chart + ".yaml").value().orElseThrow(),
            Grooves.builtIn());
    return backing.plan(1).stream()
        .filter(BarPlan::turnaround)
        .map(plan -> plan.bar().number())
        .toList();
  }
}

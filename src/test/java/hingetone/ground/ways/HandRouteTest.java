package hingetone.ground.ways;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.GroundCharts;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.neck.Tuning;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HandRouteTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  private static List<Shape> shapes(Key key) {
    return Shapes.of(NECK, key.pentatonic());
  }

  @Test
  void no_closed_path_through_three_scales_is_shorter() {
    for (Key key : Keys.MINOR) {
      isShortest(List.of(shapes(key), shapes(key.shifted(-4)), shapes(key.shifted(3))));
    }
  }

  private static void isShortest(List<List<Shape>> stages) {
    double least = Double.MAX_VALUE;
    for (Shape a : stages.get(0)) {
      for (Shape b : stages.get(1)) {
        for (Shape c : stages.get(2)) {
          least = Math.min(least, cost(List.of(a, b, c)));
        }
      }
    }
    assertThat(cost(HandRoute.shortest(NECK, stages, Optional.empty())))
        .isCloseTo(least, org.assertj.core.api.Assertions.within(1e-9));
  }

  /** Travel round the lap, and each shape's distance from the eighth fret: none here is wide. */
  private static double cost(List<Shape> route) {
    double cost = 0;
    for (int i = 0; i < route.size(); i++) {
      Shape here = route.get(i);
      cost += HandRoute.travel(NECK, here, route.get((i + 1) % route.size()));
      cost += Math.abs((here.low() + here.high()) / 2 - 8);
    }
    return cost;
  }

  @Test
  void a_hand_that_stays_around_a_fret_begins_within_a_fret_of_the_nearest_shape_in_every_key() {
    Form form = GroundCharts.everyMinorPair().form();
    for (int fret : List.of(1, 5, 9, 12)) {
      Ground ground = Ground.of(form, NECK, Optional.of(fret));
      for (Form.Bar bar : form.bars()) {
        Shape here = ground.neckAt(bar.number(), Beats.ONE);
        int nearest =
            ground.shapes(here.scale()).stream()
                .filter(shape -> shape.stretch() == Shape.Stretch.NONE)
                .mapToInt(shape -> Math.abs(shape.low() - fret))
                .min()
                .orElseThrow();
        assertThat(Math.abs(here.low() - fret))
            .as("%s", here.scale())
            .isLessThanOrEqualTo(nearest + 1);
      }
    }
  }

  @Test
  void through_a_lap_of_any_two_minor_keys_the_hand_stays_where_it_is() {
    for (Key low : Keys.MINOR) {
      for (Key high : Keys.MINOR) {
        String bars = "%sm7 | %1$sm7";
        Ground ground =
            GroundCharts.two(
                low.toString(),
                bars.formatted(low.tonic()),
                high.toString(),
                bars.formatted(high.tonic()),
                NECK);
        Shape before = ground.neckAt(1, Beats.ONE);
        Shape after = ground.neckAt(3, Beats.ONE);
        assertThat(Math.abs(before.low() - after.low()))
            .as("%s %s", low, high)
            .isLessThanOrEqualTo(2);
        assertThat(ground.neckAt(7, Beats.ONE)).isEqualTo(after);
      }
    }
  }
}

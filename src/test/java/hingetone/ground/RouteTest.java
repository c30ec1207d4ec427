package hingetone.ground;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.neck.Tuning;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import java.util.List;
import org.junit.jupiter.api.Test;

class RouteTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  private static List<Shape> shapes(String scale) {
    return Shapes.of(NECK, Scale.parse(scale).orElseThrow());
  }

  @Test
  void no_closed_path_through_three_scales_is_shorter() {
    List<List<Shape>> stages =
        List.of(
            shapes("A minor pentatonic"),
            shapes("F minor pentatonic"),
            shapes("B minor pentatonic"));
    double least = Double.MAX_VALUE;
    for (Shape a : stages.get(0)) {
      for (Shape b : stages.get(1)) {
        for (Shape c : stages.get(2)) {
          least = Math.min(least, cost(List.of(a, b, c)));
        }
      }
    }
    assertThat(cost(Route.shortest(NECK, stages)))
        .isCloseTo(least, org.assertj.core.api.Assertions.within(1e-9));
  }

  /** Travel round the lap, and each shape's distance from the eighth fret: none here is wide. */
  private static double cost(List<Shape> route) {
    double cost = 0;
    for (int i = 0; i < route.size(); i++) {
      Shape here = route.get(i);
      cost += Route.travel(NECK, here, route.get((i + 1) % route.size()));
      cost += Math.abs((here.low() + here.high()) / 2 - 8);
    }
    return cost;
  }

  @Test
  void through_a_lap_of_a_minor_and_b_minor_the_hand_stays_where_it_is() {
    Ground ground = Charts.two("A minor", "Am7 | Am7", "B minor", "Bm7 | Bm7", NECK);
    assertThat(ground.shapeAt(1, Beats.ONE).low()).isEqualTo(7);
    assertThat(ground.shapeAt(3, Beats.ONE).low()).isEqualTo(7);
    assertThat(ground.shapeAt(7, Beats.ONE)).isEqualTo(ground.shapeAt(3, Beats.ONE));
  }
}

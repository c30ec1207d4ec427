package hingetone.ground;

import java.util.Comparator;
import java.util.List;

/** Finds the shapes of the new scale that lie under the hand. */
final class Stays {
  private static final int MOST = 2;

  private Stays() {}

  /** The nearest shapes that overlap the hand's place, the nearest first. */
  static List<Stay> over(Line line) {
    return line.newShapes().stream()
        .filter(shape -> shape.overlaps(line.before().shape()))
        .map(shape -> new Stay(line.before().shape(), shape, travel(line, shape)))
        .sorted(Comparator.comparingDouble(Stay::travel))
        .limit(MOST)
        .toList();
  }

  private static double travel(Line line, hingetone.neck.Shape shape) {
    return Route.travel(line.neck(), line.before().shape(), shape);
  }
}

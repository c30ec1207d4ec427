package hingetone.ground.ways;

import java.util.Comparator;
import java.util.List;

/** Finds the shapes of the new scale that lie under the hand. */
public final class StayFinder {
  private static final int MOST = 2;

  private StayFinder() {}

  /** The nearest shapes that overlap the hand's place, the nearest first. */
  public static List<Stay> over(CrossingLine line) {
    return line.newShapes().stream()
        .filter(shape -> shape.overlaps(line.before().shape()))
        .map(shape -> new Stay(line.before().shape(), shape, travel(line, shape)))
        .sorted(Comparator.comparingDouble(Stay::travel))
        .limit(MOST)
        .toList();
  }

  private static double travel(CrossingLine line, hingetone.neck.Shape shape) {
    return HandRoute.travel(line.neck(), line.before().shape(), shape);
  }
}

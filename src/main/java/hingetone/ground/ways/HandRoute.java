package hingetone.ground.ways;

import hingetone.ground.scales.Weights;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.path.CheapestPath;
import java.util.List;

/**
 * The way over the neck through one lap on which the hand travels least: the shortest closed path
 * through the shapes that each chord's scale offers.
 */
public final class HandRoute {
  /** A shape with what the choice depends on, worked out once. */
  private record Stop(Shape shape, double place, double discomfort) {}

  private HandRoute() {}

  /**
   * One shape for each stage, so that the travel over all of them and back to the first is least.
   *
   * @param stages the shapes to choose from, stage after stage, none empty
   */
  public static List<Shape> shortest(Fretboard neck, List<List<Shape>> stages) {
    List<List<Stop>> stops =
        stages.stream().map(stage -> stage.stream().map(s -> stop(neck, s)).toList()).toList();
    return CheapestPath.round(
            stops,
            (stage, stop) -> stop.discomfort,
            (stage, from, to) -> Math.abs(to.place - from.place))
        .stream()
        .map(Stop::shape)
        .toList();
  }

  private static Stop stop(Fretboard neck, Shape shape) {
    return new Stop(shape, neck.travel(0, middle(shape)), discomfort(shape));
  }

  /** Millimetres that the hand travels from one shape to another, judged by their middles. */
  public static double travel(Fretboard neck, Shape from, Shape to) {
    return neck.travel(middle(from), middle(to));
  }

  static int middle(Shape shape) {
    return (shape.low() + shape.high()) / 2;
  }

  private static double discomfort(Shape shape) {
    double away = Math.abs(middle(shape) - Weights.COMFORTABLE_FRET);
    return Weights.AWAY * away
        + switch (shape.stretch()) {
          case NONE -> 0;
          case WIDE -> Weights.WIDE_STRETCH;
          case TOO_WIDE, BROKEN -> Weights.TOO_WIDE_STRETCH;
        };
  }
}

package hingetone.ground.ways;

import hingetone.ground.scales.Weights;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.path.CheapestPath;
import java.util.List;
import java.util.Optional;

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
   * @param position the fret that the hand stays around, its first finger's; empty where it is free
   */
  public static List<Shape> shortest(
      Fretboard neck, List<List<Shape>> stages, Optional<Integer> position) {
    List<List<Stop>> stops =
        stages.stream()
            .map(stage -> stage.stream().map(s -> stop(neck, s, position)).toList())
            .toList();
    return CheapestPath.round(
            stops,
            (stage, stop) -> stop.discomfort,
            (stage, from, to) -> Math.abs(to.place - from.place))
        .stream()
        .map(Stop::shape)
        .toList();
  }

  private static Stop stop(Fretboard neck, Shape shape, Optional<Integer> position) {
    double away =
        position
            .map(fret -> Weights.OUT_OF_POSITION * Math.abs(shape.low() - fret))
            .orElse(Weights.AWAY * Math.abs(middle(shape) - Weights.COMFORTABLE_FRET));
    return new Stop(shape, neck.travel(0, middle(shape)), away + stretch(shape));
  }

  /** Millimetres that the hand travels from one shape to another, judged by their middles. */
  public static double travel(Fretboard neck, Shape from, Shape to) {
    return neck.travel(middle(from), middle(to));
  }

  static int middle(Shape shape) {
    return (shape.low() + shape.high()) / 2;
  }

  private static double stretch(Shape shape) {
    return switch (shape.stretch()) {
      case NONE -> 0;
      case WIDE -> Weights.WIDE_STRETCH;
      case TOO_WIDE, BROKEN -> Weights.TOO_WIDE_STRETCH;
    };
  }
}

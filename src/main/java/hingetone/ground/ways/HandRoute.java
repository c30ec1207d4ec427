package hingetone.ground.ways;

import hingetone.ground.scales.Weights;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The way over the neck through one lap on which the hand travels least: the shortest closed path
 * through the shapes that each chord's scale offers.
 */
public final class HandRoute {
  private static final double UNREACHED = Double.MAX_VALUE / 4;

  private final double[][] place;
  private final double[][] discomfort;
  private final int[][] cameFrom;

  private HandRoute(Fretboard neck, List<List<Shape>> stages) {
    place = new double[stages.size()][];
    discomfort = new double[stages.size()][];
    cameFrom = new int[stages.size()][];
    for (int i = 0; i < place.length; i++) {
      List<Shape> stage = stages.get(i);
      place[i] = stage.stream().mapToDouble(s -> neck.travel(0, middle(s))).toArray();
      discomfort[i] = stage.stream().mapToDouble(HandRoute::discomfort).toArray();
      cameFrom[i] = new int[stage.size()];
    }
  }

  /**
   * One shape for each stage, so that the travel over all of them and back to the first is least.
   *
   * @param stages the shapes to choose from, stage after stage, none empty
   */
  public static List<Shape> shortest(Fretboard neck, List<List<Shape>> stages) {
    int[] chosen = new HandRoute(neck, stages).shortest();
    return IntStream.range(0, chosen.length).mapToObj(i -> stages.get(i).get(chosen[i])).toList();
  }

  private int[] shortest() {
    double best = Double.MAX_VALUE;
    int[] route = {};
    int last = place.length - 1;
    for (int start = 0; start < place[0].length; start++) {
      double[] costs = costsFrom(start);
      for (int end = 0; end < costs.length; end++) {
        double cost = costs[end] + Math.abs(place[last][end] - place[0][start]);
        if (cost < best) {
          best = cost;
          route = back(end);
        }
      }
    }
    return route;
  }

  /** The least cost of reaching each shape of the last stage; notes where each came from. */
  private double[] costsFrom(int start) {
    double[] costs = new double[place[0].length];
    Arrays.fill(costs, UNREACHED);
    costs[start] = discomfort[0][start];
    for (int stage = 1; stage < place.length; stage++) {
      double[] next = new double[place[stage].length];
      for (int i = 0; i < next.length; i++) {
        int nearest = cheapestBefore(costs, stage, i);
        cameFrom[stage][i] = nearest;
        next[i] = costs[nearest] + step(stage, nearest, i) + discomfort[stage][i];
      }
      costs = next;
    }
    return costs;
  }

  private int cheapestBefore(double[] costs, int stage, int shape) {
    int best = 0;
    for (int before = 1; before < costs.length; before++) {
      if (costs[before] + step(stage, before, shape) < costs[best] + step(stage, best, shape)) {
        best = before;
      }
    }
    return best;
  }

  private double step(int stage, int before, int shape) {
    return Math.abs(place[stage][shape] - place[stage - 1][before]);
  }

  private int[] back(int end) {
    int[] route = new int[place.length];
    route[place.length - 1] = end;
    for (int stage = place.length - 1; stage > 0; stage--) {
      route[stage - 1] = cameFrom[stage][route[stage]];
    }
    return route;
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

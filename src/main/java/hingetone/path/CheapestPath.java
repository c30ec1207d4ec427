package hingetone.path;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The cheapest way through layers of choices, one from each, by dynamic programming (Bellman 1957):
 * no greedy choice spoils what follows. Of equal ways it is the one through the earlier choices.
 *
 * @param <T> what there is to choose from
 */
public final class CheapestPath<T> {
  /** What a choice costs by itself. */
  public interface Cost<T> {
    double of(int layer, T choice);
  }

  /** What going from a choice to one of the next layer costs. */
  public interface Step<T> {
    double of(int toLayer, T from, T to);
  }

  private final List<List<T>> layers;
  private final Cost<T> cost;
  private final Step<T> step;

  /** For each layer but the first, and each of its choices, the choice before. */
  private final List<int[]> cameFrom = new ArrayList<>();

  private CheapestPath(List<List<T>> layers, Cost<T> cost, Step<T> step) {
    this.layers = layers;
    this.cost = cost;
    this.step = step;
  }

  /** The choice of each layer. Every layer has a choice. */
  public static <T> List<T> through(List<List<T>> layers, Cost<T> cost, Step<T> step) {
    if (layers.isEmpty()) {
      return List.of();
    }
    CheapestPath<T> path = new CheapestPath<>(layers, cost, step);
    return path.endingIn(cheapest(path.costs()));
  }

  /**
   * The choice of each layer where after the last comes the first again.
   *
   * @param step what going costs; from the last layer to the first it is asked with layer 0
   */
  public static <T> List<T> round(List<List<T>> layers, Cost<T> cost, Step<T> step) {
    List<T> best = List.of();
    double least = Double.POSITIVE_INFINITY;
    for (T start : layers.isEmpty() ? List.<T>of() : layers.get(0)) {
      List<List<T>> fromStart = new ArrayList<>(layers);
      fromStart.set(0, List.of(start));
      CheapestPath<T> path = new CheapestPath<>(fromStart, cost, step);
      double[] costs = path.costs();
      List<T> ends = fromStart.get(layers.size() - 1);
      for (int end = 0; end < costs.length; end++) {
        costs[end] += step.of(0, ends.get(end), start);
      }
      int end = cheapest(costs);
      if (costs[end] < least) {
        least = costs[end];
        best = path.endingIn(end);
      }
    }
    return best;
  }

  /** The least cost of reaching each choice of the last layer. */
  private double[] costs() {
    double[] before = new double[layers.get(0).size()];
    for (int i = 0; i < before.length; i++) {
      before[i] = cost.of(0, layers.get(0).get(i));
    }
    for (int layer = 1; layer < layers.size(); layer++) {
      before = next(layer, before);
    }
    return before;
  }

  private double[] next(int layer, double[] before) {
    List<T> froms = layers.get(layer - 1);
    List<T> tos = layers.get(layer);
    double[] now = new double[tos.size()];
    int[] best = new int[tos.size()];
    for (int to = 0; to < now.length; to++) {
      now[to] = Double.POSITIVE_INFINITY;
      for (int from = 0; from < before.length; from++) {
        double sum = before[from] + step.of(layer, froms.get(from), tos.get(to));
        if (sum < now[to]) {
          now[to] = sum;
          best[to] = from;
        }
      }
      now[to] += cost.of(layer, tos.get(to));
    }
    cameFrom.add(best);
    return now;
  }

  private static int cheapest(double[] costs) {
    int best = 0;
    for (int i = 1; i < costs.length; i++) {
      best = costs[i] < costs[best] ? i : best;
    }
    return best;
  }

  private List<T> endingIn(int last) {
    List<T> path = new ArrayList<>();
    int choice = last;
    for (int layer = layers.size() - 1; layer >= 0; layer--) {
      path.add(layers.get(layer).get(choice));
      choice = layer > 0 ? cameFrom.get(layer - 1)[choice] : choice;
    }
    Collections.reverse(path);
    return path;
  }
}

package hingetone.backing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The cheapest way through layers of choices, one from each, by dynamic programming (Bellman 1957):
 * no greedy choice spoils what follows.
 */
final class CheapestPath {
  private CheapestPath() {}

  /** What a choice costs by itself. */
  interface Cost<T> {
    double of(int layer, T choice);
  }

  /** What going from a choice to one of the next layer costs. */
  interface Step<T> {
    double of(int toLayer, T from, T to);
  }

  /** The choice of each layer; the first of equal ones. Every layer has a choice. */
  static <T> List<T> through(List<List<T>> layers, Cost<T> cost, Step<T> step) {
    if (layers.isEmpty()) {
      return List.of();
    }
    List<int[]> cameFrom = new ArrayList<>();
    double[] before = new double[layers.get(0).size()];
    for (int i = 0; i < before.length; i++) {
      before[i] = cost.of(0, layers.get(0).get(i));
    }
    for (int layer = 1; layer < layers.size(); layer++) {
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
      before = now;
    }
    return walkBack(layers, cameFrom, cheapest(before));
  }

  private static int cheapest(double[] costs) {
    int best = 0;
    for (int i = 1; i < costs.length; i++) {
      best = costs[i] < costs[best] ? i : best;
    }
    return best;
  }

  private static <T> List<T> walkBack(List<List<T>> layers, List<int[]> cameFrom, int last) {
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

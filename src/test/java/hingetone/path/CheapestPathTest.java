package hingetone.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CheapestPathTest {
  @Test
  void without_layers_there_is_nothing_to_choose() {
    assertThat(CheapestPath.<Integer>through(List.of(), (i, n) -> 0, (i, a, b) -> 0)).isEmpty();
    assertThat(CheapestPath.<Integer>round(List.of(), (i, n) -> 0, (i, a, b) -> 0)).isEmpty();
  }

  @Test
  void a_dear_start_is_taken_for_a_cheap_end() {
    List<List<Integer>> layers = List.of(List.of(0, 9), List.of(1, 9), List.of(9));
    assertThat(
            CheapestPath.through(layers, (i, n) -> i == 0 ? n / 9 : 0, (i, a, b) -> square(b - a)))
        .containsExactly(9, 9, 9);
  }

  @Test
  void of_equal_ways_the_one_through_the_earlier_choices_is_taken() {
    List<List<Integer>> layers = List.of(List.of(2, 1), List.of(4, 3), List.of(6, 5));
    assertThat(CheapestPath.through(layers, (i, n) -> 0, (i, a, b) -> 0)).containsExactly(2, 4, 6);
    assertThat(CheapestPath.round(layers, (i, n) -> 0, (i, a, b) -> 0)).containsExactly(2, 4, 6);
  }

  @Test
  void round_counts_the_way_back_to_the_first() {
    List<List<Integer>> layers = List.of(List.of(0, 10), List.of(4), List.of(11));
    assertThat(CheapestPath.through(layers, (i, n) -> 0, (i, a, b) -> Math.abs(b - a)))
        .containsExactly(0, 4, 11);
    assertThat(CheapestPath.round(layers, (i, n) -> 0, (i, a, b) -> Math.abs(b - a)))
        .containsExactly(10, 4, 11);
  }

  @Test
  void no_way_of_all_is_cheaper() {
    for (int seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      List<List<Integer>> layers = layers(random);
      CheapestPath.Cost<Integer> cost = (i, n) -> n * 7 % 5;
      CheapestPath.Step<Integer> step = (i, a, b) -> square(b - a) * (i + 1) % 11;
      double open = cost(CheapestPath.through(layers, cost, step), cost, step, false);
      double round = cost(CheapestPath.round(layers, cost, step), cost, step, true);
      for (List<Integer> way : ways(layers)) {
        assertThat(open).as("seed %s", seed).isLessThanOrEqualTo(cost(way, cost, step, false));
        assertThat(round).as("seed %s", seed).isLessThanOrEqualTo(cost(way, cost, step, true));
      }
    }
  }

  private static List<List<Integer>> layers(Random random) {
    List<List<Integer>> layers = new ArrayList<>();
    for (int i = 0; i < 1 + random.nextInt(4); i++) {
      layers.add(random.ints(1 + random.nextInt(3), 0, 20).boxed().toList());
    }
    return layers;
  }

  private static List<List<Integer>> ways(List<List<Integer>> layers) {
    List<List<Integer>> ways = List.of(List.of());
    for (List<Integer> layer : layers) {
      List<List<Integer>> longer = new ArrayList<>();
      for (List<Integer> way : ways) {
        for (int choice : layer) {
          List<Integer> next = new ArrayList<>(way);
          next.add(choice);
          longer.add(next);
        }
      }
      ways = longer;
    }
    return ways;
  }

  private static double cost(
      List<Integer> way,
      CheapestPath.Cost<Integer> cost,
      CheapestPath.Step<Integer> step,
      boolean round) {
    double sum = round ? step.of(0, way.get(way.size() - 1), way.get(0)) : 0;
    for (int i = 0; i < way.size(); i++) {
      sum += cost.of(i, way.get(i)) + (i > 0 ? step.of(i, way.get(i - 1), way.get(i)) : 0);
    }
    return sum;
  }

  private static double square(int n) {
    return n * n;
  }
}

package hingetone.chart;

import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Charts that go from each of some keys to each other one and end where they began. */
public final class EveryPair {
  private EveryPair() {}

  /**
   * The chart of some keys.
   *
   * @param bars what each key's section plays, such as {@code Cm7 | G7}
   * @param more lines that each section has besides, such as {@code phrases: statement 2}
   */
  public static Chart of(List<Key> keys, Function<Key, String> bars, String... more) {
    StringBuilder text = new StringBuilder("sections:\n");
    for (Key key : keys) {
      text.append("  ").append(name(key)).append(":\n    key: ").append(key).append('\n');
      for (String line : more) {
        text.append("    ").append(line).append('\n');
      }
      text.append("    bars: |\n      | ").append(bars.apply(key)).append(" |\n");
    }
    text.append("form:\n");
    walk(keys).forEach(name -> text.append("  - ").append(name).append("\n"));
    Reading<Chart> reading = ChartReader.read(new Source("every-pair", text.toString()));
    return reading
        .value()
        .orElseThrow(() -> new IllegalArgumentException(reading.problems().get(0).report()));
  }

  private static String name(Key key) {
    return "in-" + key.toString().replace("#", "-sharp").replace(' ', '-');
  }

  /** A closed walk over the keys that goes from each to each other once (Hierholzer). */
  private static List<String> walk(List<Key> keys) {
    boolean[][] used = new boolean[keys.size()][keys.size()];
    List<Integer> stack = new ArrayList<>(List.of(0));
    List<String> walk = new ArrayList<>();
    while (!stack.isEmpty()) {
      int here = stack.get(stack.size() - 1);
      int next = 0;
      while (next < keys.size() && (next == here || used[here][next])) {
        next++;
      }
      if (next < keys.size()) {
        used[here][next] = true;
        stack.add(next);
      } else {
        walk.add(name(keys.get(stack.remove(stack.size() - 1))));
      }
    }
    return walk.subList(0, walk.size() - 1);
  }
}

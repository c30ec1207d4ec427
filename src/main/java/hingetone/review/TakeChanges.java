package hingetone.review;

import hingetone.text.Choice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What changed from one take to another.
 *
 * @param first the earlier in figures
 * @param second the later
 * @param lines the changes of key that both have, by their bar, where they were gone over otherwise
 * @param shared how many changes of key both have
 */
public record TakeChanges(
    TakeFigures first, TakeFigures second, Map<Integer, Ways> lines, int shared) {
  /** How a change of key was gone over in each. */
  public record Ways(LineWay.Kind first, LineWay.Kind second) {}

  /** Less is no change: what a listener just notices (6 ms, Friberg and Sundberg). */
  private static final double NOTICED_MS = 6;

  /** Compares two takes over one chart. */
  public static TakeChanges of(Review first, Review second) {
    Map<Integer, LineWay.Kind> before = kinds(first);
    Map<Integer, LineWay.Kind> after = kinds(second);
    Map<Integer, Ways> changed = new LinkedHashMap<>();
    before.forEach(
        (bar, kind) -> {
          if (after.containsKey(bar) && after.get(bar) != kind) {
            changed.put(bar, new Ways(kind, after.get(bar)));
          }
        });
    int shared = (int) before.keySet().stream().filter(after::containsKey).count();
    return new TakeChanges(TakeFigures.of(first), TakeFigures.of(second), changed, shared);
  }

  private static Map<Integer, LineWay.Kind> kinds(Review review) {
    Map<Integer, LineWay.Kind> kinds = new TreeMap<>();
    review.lines().forEach(line -> kinds.put(line.atBar(), line.way().kind()));
    return kinds;
  }

  /** A sentence for each: timing, landings, crossings, returns. */
  public List<String> story() {
    return List.of(timing(), landings(), crossings(), returns());
  }

  private String timing() {
    Timing before = first.timing();
    Timing after = second.timing();
    if (!before.tells() || !after.tells()) {
      return "Timing: too few notes on a beat to compare.";
    }
    double narrower = before.spreadMs() - after.spreadMs();
    String steady =
        Math.abs(narrower) < NOTICED_MS
            ? "as steady as before"
            : narrower > 0 ? "steadier" : "less steady";
    double later = after.meanMs() - before.meanMs();
    String place =
        Math.abs(later) < NOTICED_MS
            ? ""
            : ", and " + Math.round(Math.abs(later)) + " ms " + (later > 0 ? "later" : "earlier");
    String spread = " (spread " + ms(before.spreadMs()) + ", then " + ms(after.spreadMs()) + ")";
    return "Timing: " + steady + spread + place + ".";
  }

  private static String ms(double value) {
    return Math.round(value) + " ms";
  }

  private String landings() {
    if (first.landings() == 0 || second.landings() == 0) {
      return "Landings: none in one of the two.";
    }
    double before = (double) first.onPlace() / first.landings();
    double after = (double) second.onPlace() / second.landings();
    int one = Double.compare(after, before);
    String more =
        one == 0 ? "as many in place" : one > 0 ? "more of them in place" : "fewer in place";
    return "Landings: "
        + more
        + ", "
        + first.onPlace()
        + " of "
        + first.landings()
        + ", then "
        + second.onPlace()
        + " of "
        + second.landings()
        + ".";
  }

  private String crossings() {
    if (shared == 0) {
      return "Crossings: the two have none in common.";
    }
    if (lines.isEmpty()) {
      return "Crossings: each gone over as before.";
    }
    List<String> changed = new ArrayList<>();
    lines.forEach(
        (bar, ways) ->
            changed.add(
                "into bar " + bar + " " + word(ways.second) + " instead of " + word(ways.first)));
    int same = shared - lines.size();
    String rest = same == 0 ? "" : same == 1 ? "; one as before" : "; " + same + " as before";
    return "Crossings: " + String.join(", ", changed) + rest + ".";
  }

  private static String word(LineWay.Kind kind) {
    return "a " + (kind == LineWay.Kind.PLAIN ? "plain way" : Choice.word(kind));
  }

  private String returns() {
    int more = second.returns() - first.returns();
    if (more == 0) {
      return "Returns: as many phrases bring an earlier one back, " + second.returns() + ".";
    }
    return "Returns: "
        + (more > 0 ? "more" : "fewer")
        + " phrases bring an earlier one back, "
        + first.returns()
        + ", then "
        + second.returns()
        + ".";
  }
}

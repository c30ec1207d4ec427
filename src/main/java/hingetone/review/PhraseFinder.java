package hingetone.review;

import hingetone.take.PlacedNote;
import java.util.Arrays;
import java.util.LinkedList;
import java.util.List;

/**
 * Cuts what was played into phrases: of all ways to cut it the one for which its {@link
 * PhraseSigns} and the lengths of the phrases speak most, found by dynamic programming.
 *
 * <p>The weights are those of a logistic regression on the tuning part of the labelled takes of
 * {@code src/build/takes}; the lengths are log-normal around two and a half bars, measured there.
 */
public final class PhraseFinder {
  /** One weight for each sign, in their order. */
  private static final double[] WEIGHTS = {
    -6.59, 2.08, 2.15, 1.17, 1.62, 0.22, 0.46, 0.10, 2.97, -0.20, 0.59, 0.72, 1.86, -1.61
  };

  private static final double READY_TO_CUT = 1.0;
  private static final double MEAN_LOG_BARS = 0.934;
  private static final double SPREAD_LOG_BARS = 0.494;
  private static final double LENGTH_COUNTS = 0.5;
  private static final int FEWEST = 3;
  private static final int MOST = 80;

  /**
   * A phrase: notes from an index to another, the end excluded.
   *
   * @param confidence how sure its beginning is, 0 to 1
   */
  public record Span(int from, int to, double confidence) {}

  private PhraseFinder() {}

  /** The phrases in order; none where nothing was played. */
  public static List<Span> of(Played played) {
    List<PlacedNote> notes = played.notes();
    if (notes.isEmpty()) {
      return List.of();
    }
    double[] evidence = evidence(played);
    int[] before = cuts(played, evidence);
    LinkedList<Span> spans = new LinkedList<>();
    for (int to = notes.size(); to > 0; to = before[to]) {
      int from = before[to];
      double sure = from == 0 ? 1 : 1 / (1 + Math.exp(-evidence[from]));
      spans.addFirst(new Span(from, to, sure));
    }
    return List.copyOf(spans);
  }

  /** The log odds of a phrase beginning with each note; the first begins one. */
  private static double[] evidence(Played played) {
    PhraseSigns signs = new PhraseSigns(played);
    double[] evidence = new double[played.notes().size()];
    for (int i = 1; i < evidence.length; i++) {
      double[] values = signs.before(i);
      double sum = 0;
      for (int k = 0; k < PhraseSigns.COUNT; k++) {
        sum += WEIGHTS[k] * values[k];
      }
      evidence[i] = signs.isTogether(i) ? Double.NEGATIVE_INFINITY : sum;
    }
    return evidence;
  }

  /** For each possible end of a phrase where the phrase begins that best ends there. */
  private static int[] cuts(Played played, double[] evidence) {
    int count = evidence.length;
    double[] best = new double[count + 1];
    int[] before = new int[count + 1];
    Arrays.fill(best, Double.NEGATIVE_INFINITY);
    best[0] = 0;
    for (int to = 1; to <= count; to++) {
      double gain = to < count ? evidence[to] + READY_TO_CUT : 0;
      for (int from = Math.max(0, to - MOST); from < to; from++) {
        boolean longEnough = to - from >= FEWEST || to == count;
        double value = best[from] + gain - LENGTH_COUNTS * unusual(played, from, to);
        if (longEnough && value > best[to]) {
          best[to] = value;
          before[to] = from;
        }
      }
    }
    return before;
  }

  /** How far the length of a phrase lies from what is usual: half the squared deviation. */
  private static double unusual(Played played, int from, int to) {
    List<PlacedNote> notes = played.notes();
    double start = notes.get(from).at();
    double bar = played.barAt(start).of().meter().barLength().toDouble();
    double end = to < notes.size() ? notes.get(to).at() : notes.get(to - 1).at() + bar;
    double bars = Math.max(1e-3, (end - start) / bar);
    double away = (Math.log(bars) - MEAN_LOG_BARS) / SPREAD_LOG_BARS;
    return away * away / 2;
  }
}

package hingetone.journal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How an exercise stands with a chart.
 *
 * <p>Source: the boxes of S. Leitner, So lernt man lernen (1972), here with intervals that double:
 * an exercise that went well moves a box up, one that did not goes back to the first.
 *
 * @param last when it was done last
 * @param score how it went then, 0 to 1
 * @param box 1 to {@value #LAST_BOX}
 */
public record Standing(Activity activity, String chart, Instant last, double score, int box) {
  /** From here on it went well. */
  static final double WELL = 0.8;

  private static final int LAST_BOX = 6;
  private static final double SECONDS_A_DAY = 86_400;

  /** The standings of all exercises with a score, by exercise and chart. */
  public static List<Standing> of(List<LogEntry> entries) {
    Map<List<Object>, Standing> standings = new LinkedHashMap<>();
    for (LogEntry entry : entries) {
      if (entry.activity().isDrill() && entry.score().isPresent()) {
        standings.merge(
            List.of(entry.activity(), entry.chart()),
            first(entry),
            (before, now) -> before.then(now));
      }
    }
    return new ArrayList<>(standings.values());
  }

  private static Standing first(LogEntry entry) {
    double score = entry.score().orElseThrow();
    int box = score >= WELL ? 2 : 1;
    return new Standing(entry.activity(), entry.chart(), entry.start(), score, box);
  }

  private Standing then(Standing now) {
    int next = now.score >= WELL ? Math.min(LAST_BOX, box + 1) : 1;
    return new Standing(activity, chart, now.last, now.score, next);
  }

  /** After how many days it is due again: 1, 2, 4, 8, 16, 32. */
  public int days() {
    return 1 << (box - 1);
  }

  /** The days since it was done last, as a multiple of those after which it is due. */
  public double overdue(Instant now) {
    return Duration.between(last, now).toSeconds() / SECONDS_A_DAY / days();
  }
}

package hingetone.journal;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What to do next.
 *
 * <p>The rule: of the exercises that are due the one that is so the longest, measured by its own
 * interval ({@link Standing}), so that what is weak comes back soon and what goes well seldom; of
 * two alike the weaker. Where nothing is due, an exercise not yet done with the chart played last.
 *
 * @param standing how it stood; empty where it was never done
 */
public record NextStep(Activity activity, String chart, Optional<Standing> standing) {
  /** In this order exercises are taken up. */
  private static final List<Activity> ORDER =
      Stream.of(Activity.values()).filter(Activity::isDrill).toList();

  /** What to do next; empty where nothing is due, or nothing was played yet. */
  public static Optional<NextStep> of(List<LogEntry> entries, Instant now) {
    List<Standing> standings = Standing.of(entries);
    return standings.stream()
        .filter(standing -> standing.overdue(now) >= 1)
        .max(
            Comparator.<Standing>comparingDouble(standing -> standing.overdue(now))
                .thenComparing(Comparator.comparingDouble(Standing::score).reversed()))
        .map(due -> new NextStep(due.activity(), due.chart(), Optional.of(due)))
        .or(() -> untried(entries, standings));
  }

  private static Optional<NextStep> untried(List<LogEntry> entries, List<Standing> standings) {
    return entries.stream()
        .max(Comparator.comparing(LogEntry::start))
        .map(LogEntry::chart)
        .flatMap(
            chart ->
                ORDER.stream()
                    .filter(
                        activity ->
                            standings.stream()
                                .noneMatch(
                                    s -> s.activity() == activity && s.chart().equals(chart)))
                    .findFirst()
                    .map(activity -> new NextStep(activity, chart, Optional.empty())));
  }
}

package hingetone.print;

import hingetone.journal.LogEntry;
import hingetone.journal.NextStep;
import hingetone.journal.PracticeWeek;
import hingetone.journal.Standing;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The practice log as JSON. */
public final class LogJson {
  private LogJson() {}

  /**
   * The tree.
   *
   * @param entries what was practised, the oldest first
   */
  public static Object tree(List<LogEntry> entries, Instant now, ZoneId zone) {
    return Json.object(
        "version",
        1,
        "entries",
        entries.stream().map(LogJson::entry).toList(),
        "weeks",
        PracticeWeek.of(entries, zone).stream().map(LogJson::week).toList(),
        "standings",
        Standing.of(entries).stream().map(standing -> standing(standing, now)).toList(),
        "next",
        NextStep.of(entries, now).map(LogJson::next));
  }

  private static Object entry(LogEntry entry) {
    return Json.object(
        "start", entry.start().toString(),
        "activity", entry.activity().toString(),
        "chart", entry.chart(),
        "keys", entry.keys(),
        "seconds", entry.seconds(),
        "bpm", entry.bpm(),
        "score", entry.score());
  }

  private static Object week(PracticeWeek week) {
    return Json.object(
        "monday", week.monday().toString(),
        "minutes", week.minutes(),
        "landings", optional(week.landings()),
        "tempos", week.tempos());
  }

  private static Optional<Double> optional(OptionalDouble value) {
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private static Object standing(Standing standing, Instant now) {
    return Json.object(
        "activity", standing.activity().toString(),
        "chart", standing.chart(),
        "last", standing.last().toString(),
        "score", standing.score(),
        "dueAfterDays", standing.days(),
        "isDue", standing.overdue(now) >= 1);
  }

  private static Object next(NextStep step) {
    return Json.object("activity", step.activity().toString(), "chart", step.chart());
  }
}

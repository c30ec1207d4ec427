package hingetone.journal;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * A week of practice, from Monday on.
 *
 * @param entries what was practised in it, takes left out, as they are part of what was played
 */
public record PracticeWeek(LocalDate monday, List<LogEntry> entries) {

  /** The weeks from the first entry to the last, those without practice among them. */
  public static List<PracticeWeek> of(List<LogEntry> entries, ZoneId zone) {
    TreeMap<LocalDate, List<LogEntry>> weeks =
        entries.stream()
            .filter(entry -> entry.activity() != Activity.TAKE)
            .collect(
                Collectors.groupingBy(
                    entry -> monday(entry, zone), TreeMap::new, Collectors.toList()));
    List<PracticeWeek> all = new ArrayList<>();
    for (LocalDate week = weeks.isEmpty() ? null : weeks.firstKey();
        week != null && !week.isAfter(weeks.lastKey());
        week = week.plusWeeks(1)) {
      all.add(new PracticeWeek(week, weeks.getOrDefault(week, List.of())));
    }
    return all;
  }

  private static LocalDate monday(LogEntry entry, ZoneId zone) {
    return entry
        .start()
        .atZone(zone)
        .toLocalDate()
        .with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  /** Whole minutes played. */
  public long minutes() {
    return Math.round(entries.stream().mapToLong(LogEntry::seconds).sum() / 60.0);
  }

  /** The fastest tempo at which each chart went, in beats a minute, by its title. */
  public Map<String, Double> tempos() {
    Map<String, Double> fastest = new TreeMap<>();
    entries.forEach(
        entry -> entry.bpm().ifPresent(bpm -> fastest.merge(entry.chart(), bpm, Math::max)));
    return fastest;
  }

  /** The mean share of landings on their place, 0 to 1, in free play and in that exercise. */
  public OptionalDouble landings() {
    return mean(entry -> entry.activity() == Activity.PLAY || entry.activity() == Activity.LANDING);
  }

  private OptionalDouble mean(Predicate<LogEntry> which) {
    return entries.stream()
        .filter(which)
        .flatMap(entry -> entry.score().stream())
        .mapToDouble(score -> score)
        .average();
  }
}

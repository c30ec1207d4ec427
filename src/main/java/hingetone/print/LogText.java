package hingetone.print;

import hingetone.journal.LogEntry;
import hingetone.journal.NextStep;
import hingetone.journal.PracticeWeek;
import hingetone.journal.Standing;
import hingetone.text.DisplayWidth;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** The practice log as a table and small plots, 80 columns wide. */
public final class LogText {
  private static final int WEEKS = 8;
  private static final int NEWEST = 10;
  private static final int LONGEST_BAR = 50;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  private final List<LogEntry> entries;
  private final Instant now;
  private final ZoneId zone;
  private final List<String> lines = new ArrayList<>();

  private LogText(List<LogEntry> entries, Instant now, ZoneId zone) {
    this.entries = entries;
    this.now = now;
    this.zone = zone;
  }

  /**
   * The lines.
   *
   * @param entries what was practised, the oldest first
   */
  public static List<String> lines(List<LogEntry> entries, Instant now, ZoneId zone) {
    LogText text = new LogText(entries, now, zone);
    if (entries.isEmpty()) {
      return List.of("Nothing practised yet: play and drill write the log.");
    }
    List<PracticeWeek> weeks = newest(PracticeWeek.of(entries, zone), WEEKS);
    text.minutes(weeks);
    text.tempos(weeks);
    text.landings(weeks);
    text.newest();
    text.outlook();
    return text.lines;
  }

  private static <T> List<T> newest(List<T> all, int most) {
    return all.subList(Math.max(0, all.size() - most), all.size());
  }

  private void minutes(List<PracticeWeek> weeks) {
    if (!weeks.isEmpty()) {
      lines.add("Minutes a week");
    }
    long most = weeks.stream().mapToLong(PracticeWeek::minutes).max().orElse(0);
    for (PracticeWeek week : weeks) {
      lines.add(row(day(week.monday()), bar(week.minutes(), most), week.minutes() + ""));
    }
  }

  private void tempos(List<PracticeWeek> weeks) {
    Map<String, List<String>> charts = new TreeMap<>();
    for (PracticeWeek week : weeks) {
      week.tempos()
          .forEach(
              (chart, bpm) ->
                  charts
                      .computeIfAbsent(chart, c -> new ArrayList<>())
                      .add(String.format(Locale.ROOT, "%4.0f", bpm)));
    }
    if (!charts.isEmpty()) {
      lines.add("");
      lines.add("Tempo reached, the best of each week with the chart");
    }
    charts.forEach(
        (chart, tempos) -> lines.add("  " + padded(chart, 26) + " " + String.join(" ", tempos)));
  }

  private void landings(List<PracticeWeek> weeks) {
    List<String> rows = new ArrayList<>();
    for (PracticeWeek week : weeks) {
      OptionalDouble share = week.landings();
      if (share.isPresent()) {
        String bar = bar(Math.round(100 * share.getAsDouble()), 100);
        rows.add(row(day(week.monday()), bar, percent(share.getAsDouble())));
      }
    }
    if (!rows.isEmpty()) {
      lines.add("");
      lines.add("Landings on their place");
      lines.addAll(rows);
    }
  }

  private void newest() {
    lines.add("");
    lines.add(
        String.format(
            "%-16s  %-9s %-20s %9s %7s %6s", "when", "what", "chart", "bpm", "min", "well"));
    for (LogEntry entry : newest(entries, NEWEST)) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%-16s  %-9s %s %9s %7d %6s",
              MOMENT.format(entry.start().atZone(zone)),
              entry.activity(),
              padded(entry.chart(), 20),
              entry.bpm().map(bpm -> String.format(Locale.ROOT, "%.0f", bpm)).orElse(""),
              Math.round(entry.seconds() / 60.0),
              entry.score().map(LogText::percent).orElse("")));
    }
  }

  private void outlook() {
    lines.add("");
    Standing.of(entries).stream()
        .min(Comparator.comparingDouble(Standing::score))
        .ifPresent(
            weakest ->
                lines.add(
                    "Weakest: "
                        + weakest.activity()
                        + " with "
                        + weakest.chart()
                        + ", "
                        + percent(weakest.score())
                        + " went well."));
    Optional<NextStep> next = NextStep.of(entries, now);
    lines.add(
        next.map(step -> "Next: " + step.activity() + " with " + step.chart() + ", " + why(step))
            .orElse("Nothing is due: play what you like."));
  }

  /** Why it is next, in a few words. */
  private String why(NextStep step) {
    return step.standing()
        .map(s -> percent(s.score()) + " went well " + ago(s.last()) + ".")
        .orElse("not done yet with this chart.");
  }

  private String ago(Instant then) {
    long days = Duration.between(then, now).toDays();
    return days == 0 ? "today" : days == 1 ? "yesterday" : days + " days ago";
  }

  private static String row(String name, String bar, String value) {
    return String.format("  %-8s %s %s", name, bar, value).replaceAll(" {2,}(?=\\S+$)", " ");
  }

  private static String bar(long value, long most) {
    return "#".repeat(most == 0 ? 0 : (int) Math.ceil((double) LONGEST_BAR * value / most));
  }

  private static String day(LocalDate date) {
    return DAY.format(date);
  }

  private static String percent(double share) {
    return Math.round(100 * share) + " %";
  }

  /** A text cut or filled up to a width on the screen. */
  private static String padded(String text, int width) {
    StringBuilder cut = new StringBuilder();
    for (int c : text.codePoints().toArray()) {
      String more = cut + Character.toString(c);
      if (DisplayWidth.of(more) > width) {
        break;
      }
      cut.appendCodePoint(c);
    }
    return cut + " ".repeat(width - DisplayWidth.of(cut.toString()));
  }
}

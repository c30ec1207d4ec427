package hingetone.drill;

import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.plan.Prompt;
import hingetone.review.LineWay;
import hingetone.take.PlacedNote;
import hingetone.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Scores a round by what was played in it. The bounds are our own; each exercise's rule stands in
 * {@code src/docs/drills.md}. A player who is steadily late or early is measured by that: what
 * counts is how even it is.
 */
public final class RoundScore {
  /** Nearer to the player's own place than this a note is on it, in milliseconds. */
  private static final double ON_IT_MS = 40;

  /** Someone's own place lies at most so far from the beat. */
  private static final double MOST_LAG_MS = 90;

  private static final double SHARED = 0.5;
  private static final double SAME = 0.8;

  private final Performed played;
  private final Exercise.Level level;

  private RoundScore(Performed played, Exercise.Level level) {
    this.played = played;
    this.level = level;
  }

  /** How a round of an exercise went; nothing played scores nothing. */
  public static Round of(Exercise exercise, int level, Performed played) {
    if (played.notes().isEmpty()) {
      return new Round(0, "nothing was heard");
    }
    RoundScore score = new RoundScore(played, exercise.levels().get(level));
    return switch (exercise.activity()) {
      case LANDING -> score.landing();
      case CROSSING -> score.crossing();
      case EXCHANGE -> score.exchange();
      case ENDINGS -> score.endings();
      case OCTAVE -> score.octave();
      case EAR -> score.ear();
      case SILENCE -> score.silence();
      case OFFSET -> score.offset(3 + 2 * level);
      default -> throw new IllegalArgumentException("no exercise: " + exercise.activity());
    };
  }

  private static Round round(List<Double> parts, String words) {
    double mean = parts.stream().mapToDouble(part -> part).average().orElse(0);
    return new Round(Math.max(0, Math.min(1, mean)), words);
  }

  private static String of(long good, long all, String what) {
    return good + " of " + all + " " + what;
  }

  private Round landing() {
    List<Prompt> prompts = played.prompts();
    List<Double> late = late(prompts);
    double lag = lag(late);
    long on = late.stream().filter(ms -> Math.abs(ms - lag) <= ON_IT_MS).count();
    String own =
        Math.abs(lag) < 15
            ? ""
            : String.format(", evenly %.0f ms %s", Math.abs(lag), lag > 0 ? "behind" : "ahead");
    long inKey =
        prompts.stream()
            .flatMap(prompt -> played.landing(prompt).filter(n -> fits(n, prompt)).stream())
            .count();
    double timing = prompts.isEmpty() ? 0 : (double) on / prompts.size();
    double notes = prompts.isEmpty() ? 0 : (double) inKey / prompts.size();
    return new Round(
        0.75 * timing + 0.25 * notes, of(on, prompts.size(), "landings on their place") + own);
  }

  /** Whether a landing is a note of the chord, or of the key's own scale. */
  private boolean fits(PlacedNote note, Prompt prompt) {
    Key key = played.key(prompt.landOn().bar());
    return key.heptatonic().degreeOf(note.chroma()).isPresent()
        || key.pentatonic().degreeOf(note.chroma()).isPresent();
  }

  private List<Double> late(List<Prompt> prompts) {
    List<Double> late = new ArrayList<>();
    for (Prompt prompt : prompts) {
      played.landing(prompt).ifPresent(note -> late.add(played.late(note, prompt)));
    }
    return late;
  }

  /** The player's own place: the middle of how late the notes are, within what can be meant. */
  private static double lag(List<Double> late) {
    List<Double> sorted = late.stream().sorted().toList();
    double middle = sorted.size() < 3 ? 0 : sorted.get(sorted.size() / 2);
    return Math.max(-MOST_LAG_MS, Math.min(MOST_LAG_MS, middle));
  }

  private Round crossing() {
    List<Double> parts = new ArrayList<>();
    int good = 0;
    int bars = played.form().bars().size();
    int first = (played.lap() - 1) * bars + 1;
    for (int bar = first + 1; bar <= first + bars; bar++) {
      if (!played.key(bar).equals(played.key(bar - 1))) {
        double part = line(bar);
        parts.add(part);
        good += part == 1 ? 1 : 0;
      }
    }
    return round(parts, of(good, parts.size(), "crossings as they were asked"));
  }

  private double line(int bar) {
    double beat = played.form().bar(bar).meter().beatLength().toDouble();
    double at = played.form().startOf(bar).toDouble();
    double into = played.form().startOf(bar - 1).toDouble();
    double before = played.form().startOf(Math.max(1, bar - 5)).toDouble();
    LineWay way = LineWay.of(new LineWay.Line(at, into, before, beat), played.notes());
    Leave asked = played.plan().wayInto(bar).orElse(Leave.EITHER);
    boolean run = way.kind() == LineWay.Kind.RUN;
    boolean hold = way.kind() == LineWay.Kind.HOLD;
    if (asked == Leave.RUN ? run : asked == Leave.HOLD ? hold : run || hold) {
      return inKey(way, bar) ? 1 : 0.6;
    }
    return run || hold ? 0.3 : 0;
  }

  /** Whether what sounds after the line belongs to the new key. */
  private boolean inKey(LineWay way, int bar) {
    return way.held()
        .or(way::landed)
        .filter(note -> played.key(bar).heptatonic().degreeOf(note.chroma()).isPresent())
        .isPresent();
  }

  /** A reply is there, takes something up without repeating all, lands, and stops in time. */
  private Round exchange() {
    List<Double> parts = new ArrayList<>();
    int taken = 0;
    Map<Integer, Prompt> byIndex = byIndex();
    for (Prompt prompt : played.prompts()) {
      if (prompt.role() == Role.REPLY) {
        Optional<Prompt> asked = prompt.repliesTo().map(byIndex::get);
        Kinship kin = asked.map(statement -> kinship(statement, prompt)).orElse(Kinship.NONE);
        boolean takesUp = (kin.rhythm() >= SHARED || kin.opening() >= SHARED) && kin.all() < 0.95;
        taken += takesUp ? 1 : 0;
        parts.add(isThere(prompt) ? 0.4 + (takesUp ? 0.4 : 0) + (stops(prompt) ? 0.2 : 0) : 0.0);
      }
    }
    return round(parts, of(taken, parts.size(), "replies took something up"));
  }

  private boolean isThere(Prompt prompt) {
    return played.within(prompt, played.notes()).size() >= 2;
  }

  /** Whether nothing is struck between a prompt's end and what comes next. */
  private boolean stops(Prompt prompt) {
    double from = played.form().quarters(prompt.stopBy()).toDouble() + 0.1;
    double to = from + played.beat(prompt) * 0.5;
    return played.notes().stream().noneMatch(note -> note.at() >= from && note.at() < to);
  }

  private Round endings() {
    List<Double> parts = new ArrayList<>();
    int good = 0;
    for (Kinship kin : returns()) {
      boolean opens = kin.opening() >= SAME;
      boolean another = kin.all() < SAME;
      parts.add(opens ? another ? 1.0 : 0.5 : 0.0);
      good += opens && another ? 1 : 0;
    }
    return round(parts, of(good, parts.size(), "came back with another ending"));
  }

  private Round octave() {
    List<Double> parts = new ArrayList<>();
    int good = 0;
    for (Kinship kin : returns()) {
      boolean same = kin.all() >= 0.6;
      boolean octave = kin.semitones() != 0 && kin.semitones() % 12 == 0;
      parts.add(same ? octave ? 1.0 : 0.3 : 0.0);
      good += same && octave ? 1 : 0;
    }
    return round(parts, of(good, parts.size(), "came back an octave away"));
  }

  /** What each return shares with the statement it takes up, in the same lap. */
  private List<Kinship> returns() {
    Map<Integer, Prompt> byIndex = byIndex();
    return played.prompts().stream()
        .filter(prompt -> prompt.again().map(byIndex::containsKey).orElse(false))
        .map(prompt -> kinship(byIndex.get(prompt.again().orElseThrow()), prompt))
        .toList();
  }

  private Map<Integer, Prompt> byIndex() {
    return played.prompts().stream().collect(Collectors.toMap(Prompt::index, Function.identity()));
  }

  private Kinship kinship(Prompt then, Prompt now) {
    return Kinship.of(
        played.within(then, played.notes()),
        played.within(now, played.notes()),
        played.place(now) - played.place(then),
        played.beat(then));
  }

  private Round ear() {
    List<Double> parts = new ArrayList<>();
    int good = 0;
    Map<Integer, Prompt> byIndex = byIndex();
    for (Prompt prompt : played.prompts()) {
      if (prompt.repliesTo().map(byIndex::containsKey).orElse(false)) {
        Prompt asked = byIndex.get(prompt.repliesTo().get());
        double part =
            sameNotes(
                played.within(asked, played.machine()), played.within(prompt, played.notes()));
        parts.add(part);
        good += part >= SAME ? 1 : 0;
      }
    }
    return round(parts, of(good, parts.size(), "were the same notes"));
  }

  /** The share of notes that come in the same order, in any octave; the rhythm is free. */
  private static double sameNotes(List<PlacedNote> asked, List<PlacedNote> given) {
    int[][] longest = new int[asked.size() + 1][given.size() + 1];
    for (int i = 1; i <= asked.size(); i++) {
      for (int k = 1; k <= given.size(); k++) {
        longest[i][k] =
            asked.get(i - 1).chroma() == given.get(k - 1).chroma()
                ? longest[i - 1][k - 1] + 1
                : Math.max(longest[i - 1][k], longest[i][k - 1]);
      }
    }
    int all = Math.max(asked.size(), given.size());
    return all == 0 ? 0 : (double) longest[asked.size()][given.size()] / all;
  }

  /** The first stroke after each silence is where the player's others are. */
  private Round silence() {
    List<Double> parts = new ArrayList<>();
    int bars = played.form().bars().size();
    int first = (played.lap() - 1) * bars + 1;
    int period = 2 * level.silentBars();
    double lag = lag(gridLate());
    int good = 0;
    for (int bar = first; bar < first + bars; bar++) {
      if (bar > period && (bar - 1) % period == 0) {
        Optional<Double> late = lateAt(bar);
        boolean on = late.filter(ms -> Math.abs(ms - lag) <= 1.5 * ON_IT_MS).isPresent();
        parts.add(on ? 1.0 : late.isPresent() ? 0.3 : 0.0);
        good += on ? 1 : 0;
      }
    }
    return round(parts, of(good, parts.size(), "times there when the band came back"));
  }

  /** How late the stroke nearest to a bar line is, in milliseconds; empty without one near it. */
  private Optional<Double> lateAt(int bar) {
    double line = played.form().startOf(bar).toDouble();
    double beat = played.form().bar(bar).meter().beatLength().toDouble();
    return played.notes().stream()
        .map(note -> (note.at() - line) / beat)
        .filter(beats -> Math.abs(beats) <= 0.5)
        .min((a, b) -> Double.compare(Math.abs(a), Math.abs(b)))
        .map(beats -> beats * played.beatMillis());
  }

  /** How late each stroke is from the eighth it is nearest to, in milliseconds. */
  private List<Double> gridLate() {
    double beat = played.form().bars().get(0).meter().beatLength().toDouble();
    return played.notes().stream()
        .map(note -> 2 * note.at() / beat)
        .map(eighths -> (eighths - Math.rint(eighths)) / 2 * played.beatMillis())
        .toList();
  }

  /** Eighths without a gap, whose direction comes back every so many notes. */
  private Round offset(int figure) {
    double beat = played.form().bars().get(0).meter().beatLength().toDouble();
    List<PlacedNote> notes = played.notes();
    long eighths = Math.round(2 * (played.end() - played.start()) / beat);
    long struck =
        notes.stream()
            .filter(note -> note.at() >= played.start() - 0.25 * beat && note.at() < played.end())
            .map(note -> Math.rint(2 * note.at() / beat))
            .distinct()
            .count();
    int same = 0;
    int compared = 0;
    for (int i = figure + 1; i < notes.size(); i++) {
      int now = notes.get(i).pitch() - notes.get(i - 1).pitch();
      int then = notes.get(i - figure).pitch() - notes.get(i - figure - 1).pitch();
      compared++;
      same += Integer.signum(now) == Integer.signum(then) && Math.abs(now - then) <= 2 ? 1 : 0;
    }
    double full = Math.min(1, (double) struck / eighths);
    double repeats = compared == 0 ? 0 : (double) same / compared;
    return new Round(
        full * repeats,
        String.format("%.0f %% of the eighths, %.0f %% repeated", 100 * full, 100 * repeats));
  }
}

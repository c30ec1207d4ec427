package hingetone.review;

import hingetone.take.PlacedNote;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How a line between two keys was gone over. With the last bar before the line as <em>into</em> and
 * the four bars before that as <em>before</em>, density being notes struck a beat and a double stop
 * counted once: a hold where a note struck before the line sounds half a beat past it and one and a
 * half in all; else a rest where nothing sounds from a beat before to a beat after; else a run
 * where into is 1.5 times as dense as before, or four notes of the last two beats move by single
 * frets; else plain.
 *
 * @param kind how it was gone over
 * @param held the note that was held over; empty for all but a hold
 * @param landed the first note struck on the line, up to half a beat after it, or before it and
 *     sounding over it; empty where there is none
 * @param densityBefore notes struck a beat in the bars before
 * @param densityInto notes struck a beat in the last bar
 */
public record LineWay(
    Kind kind,
    Optional<PlacedNote> held,
    Optional<PlacedNote> landed,
    double densityBefore,
    double densityInto) {
  /** How a line is gone over. */
  public enum Kind {
    RUN,
    HOLD,
    REST,
    PLAIN
  }

  private static final double PAST_LINE = 0.5;
  private static final double HELD_IN_ALL = 1.5;
  private static final double DENSER = 1.5;
  private static final int FRETS_MOVED = 4;

  /** After a silence a run strikes a note a beat at least; our own bound. */
  private static final double RUN_AFTER_SILENCE = 1;

  /** Notes struck within this part of a beat are one double stop or chord; our own bound. */
  static final double TOGETHER = 0.08;

  /** What ends or begins within this part of a beat of a bound does not cross it; our own. */
  private static final double SLACK = 0.05;

  /** A note struck nearer to the line than this part of a beat is on it; our own bound. */
  private static final double ON_LINE = 0.2;

  /**
   * A line and what leads to it, in quarter notes from bar 1.
   *
   * @param at where it lies
   * @param into where the last bar before it begins
   * @param before where the bars before that begin
   * @param beat how long a beat is
   */
  public record Line(double at, double into, double before, double beat) {}

  /** The way over a line among the notes around it, in whatever order they are. */
  public static LineWay of(Line line, List<PlacedNote> notes) {
    List<PlacedNote> sorted =
        notes.stream().sorted(Comparator.comparingDouble(PlacedNote::at)).toList();
    double before = density(sorted, line.before(), line.into(), line.beat());
    double into = density(sorted, line.into(), line.at(), line.beat());
    Optional<PlacedNote> held = held(line, sorted);
    Optional<PlacedNote> landed = landed(line, sorted);
    Kind kind =
        held.isPresent()
            ? Kind.HOLD
            : isRest(line, sorted)
                ? Kind.REST
                : isRun(line, sorted, before, into) ? Kind.RUN : Kind.PLAIN;
    return new LineWay(kind, held, landed, before, into);
  }

  /** The first note on the line or after it; before it only one that sounds over it, a push. */
  private static Optional<PlacedNote> landed(Line line, List<PlacedNote> notes) {
    double reach = PAST_LINE * line.beat() + 1e-9;
    double slack = SLACK * line.beat();
    return notes.stream()
        .filter(n -> Math.abs(n.at() - line.at()) <= reach)
        .filter(n -> n.at() >= line.at() - slack || n.end() > line.at() + slack)
        .findFirst();
  }

  /** The longest of the notes that are held over. */
  private static Optional<PlacedNote> held(Line line, List<PlacedNote> notes) {
    double slack = SLACK * line.beat();
    return notes.stream()
        .filter(n -> n.at() < line.at() - ON_LINE * line.beat())
        .filter(n -> n.end() >= line.at() + PAST_LINE * line.beat() - slack)
        .filter(n -> n.length() >= HELD_IN_ALL * line.beat() - slack)
        .max(Comparator.comparingDouble(PlacedNote::length));
  }

  private static boolean isRest(Line line, List<PlacedNote> notes) {
    double from = line.at() - (1 - SLACK) * line.beat();
    double to = line.at() + (1 - SLACK) * line.beat();
    return notes.stream().noneMatch(n -> n.at() < to && n.end() > from);
  }

  private static boolean isRun(Line line, List<PlacedNote> notes, double before, double into) {
    boolean denser = before > 0 ? into >= DENSER * before : into >= RUN_AFTER_SILENCE;
    return denser || movesByFrets(line, notes) >= FRETS_MOVED;
  }

  /** The most notes in a row of the last two beats that go by single frets. */
  private static int movesByFrets(Line line, List<PlacedNote> notes) {
    double from = line.at() - (2 + SLACK) * line.beat();
    List<PlacedNote> last =
        notes.stream()
            .filter(n -> n.at() >= from && n.at() <= line.at() + SLACK * line.beat())
            .toList();
    int most = 0;
    int row = 1;
    for (int i = 1; i < last.size(); i++) {
      boolean byFret = Math.abs(last.get(i).pitch() - last.get(i - 1).pitch()) == 1;
      row = byFret ? row + 1 : 1;
      most = Math.max(most, row);
    }
    return most;
  }

  /** Notes struck a beat from a place to another, those struck together counted once. */
  private static double density(List<PlacedNote> sorted, double from, double to, double beat) {
    int struck = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (PlacedNote note : sorted) {
      boolean inside = note.at() >= from - SLACK * beat && note.at() < to - SLACK * beat;
      if (inside && note.at() - last > TOGETHER * beat) {
        struck++;
        last = note.at();
      }
    }
    return to > from ? struck * beat / (to - from) : 0;
  }
}

package hingetone.take;

import hingetone.hearing.Technique;
import java.util.List;
import java.util.Optional;

/**
 * How a note was played, as far as that is known.
 *
 * @param technique how it begins and whether it is bent
 * @param vibrato whether its pitch swings
 * @param string the string it was played on, 1 being the highest; empty where nothing tells
 * @param curve its pitch where that moves, in order of time; empty for a plain note
 */
public record Handling(
    Technique technique, boolean vibrato, Optional<Integer> string, List<Point> curve) {
  /** Picked, nothing more is known. */
  public static final Handling PLAIN =
      new Handling(Technique.PLAIN, false, Optional.empty(), List.of());

  private static final double BENT = 0.5;
  private static final double CURLED = 0.25;

  /** A swing of the pitch, in semitones, and how many turns make a vibrato; our own bounds. */
  private static final double SWING = 0.1;

  private static final int TURNS = 4;

  /**
   * The pitch from a moment on.
   *
   * @param at in quarter notes, as the note's own places
   * @param midi MIDI number with fractions
   */
  public record Point(double at, double midi) {}

  public Handling {
    curve = List.copyOf(curve);
  }

  /** What a pitch that moves tells of a note struck at a pitch. */
  static Handling of(double struck, List<Point> curve) {
    if (curve.isEmpty()) {
      return PLAIN;
    }
    double last = curve.get(curve.size() - 1).midi();
    double top = Math.max(struck, curve.stream().mapToDouble(Point::midi).max().orElseThrow());
    Technique technique =
        struck - last >= BENT
            ? Technique.PREBEND
            : top - struck < CURLED
                ? Technique.PLAIN
                : top - struck < BENT
                    ? Technique.CURL
                    : top - last >= BENT ? Technique.RELEASE : Technique.BEND;
    return new Handling(technique, turns(struck, curve) >= TURNS, Optional.empty(), curve);
  }

  /** How often the pitch turns round after a swing. */
  private static int turns(double struck, List<Point> curve) {
    int turns = 0;
    int way = 0;
    double extreme = struck;
    for (Point point : curve) {
      double moved = point.midi() - extreme;
      boolean on = way == 0 ? moved != 0 : Math.signum(moved) == way;
      if (on) {
        way = way == 0 ? (int) Math.signum(moved) : way;
        extreme = point.midi();
      } else if (Math.abs(moved) >= SWING) {
        turns++;
        way = -way;
        extreme = point.midi();
      }
    }
    return turns;
  }

  /** The same on a string that is known. */
  Handling onString(int known) {
    return new Handling(technique, vibrato, Optional.of(known), curve);
  }
}

package hingetone.take;

import java.util.List;

/**
 * A note as it was played on a MIDI instrument.
 *
 * @param on when it was struck, in nanoseconds of the machine's clock
 * @param off when it ended, on the same clock; never before {@code on}
 * @param channel its MIDI channel, 0 to 15: the string, on a guitar that sends one a string
 * @param key MIDI note number, 0 to 127
 * @param velocity MIDI velocity, 1 to 127
 * @param bends how far it was bent from when on, in order of time; empty for a plain note
 */
public record PlayedNote(long on, long off, int channel, int key, int velocity, List<Bend> bends) {
  /** Below this a bend is vibrato or a wheel that does not rest at its centre, in semitones. */
  private static final double LEAST_BEND = 0.5;

  /**
   * How far the pitch lies from the key from a moment on.
   *
   * @param at in nanoseconds of the machine's clock
   * @param semitones up, or down where negative
   */
  public record Bend(long at, double semitones) {}

  public PlayedNote {
    if (off < on) {
      throw new IllegalArgumentException("a note ends after it is struck: " + on + ", " + off);
    }
    bends = List.copyOf(bends);
  }

  /** MIDI number, with fractions, of the pitch it begins with. */
  public double struck() {
    return key
        + bends.stream()
            .filter(bend -> bend.at() <= on)
            .reduce((first, later) -> later)
            .map(Bend::semitones)
            .orElse(0.0);
  }

  /**
   * MIDI number, with fractions, of the pitch it counts as: the one furthest from the pitch struck
   * where that is at least half a semitone away, else the pitch struck.
   */
  public double reached() {
    double struck = struck();
    double reached = struck;
    for (Bend bend : bends) {
      double pitch = key + bend.semitones();
      if (Math.abs(pitch - struck) > Math.abs(reached - struck)) {
        reached = pitch;
      }
    }
    return Math.abs(reached - struck) >= LEAST_BEND ? reached : struck;
  }

  /** The note in musical time, its places in quarter notes from bar 1. */
  public PlacedNote placed(double at, double end) {
    double each = (end - at) / Math.max(1, off - on);
    List<Handling.Point> curve =
        bends.stream()
            .map(
                bend ->
                    new Handling.Point(
                        at + Math.max(0, bend.at() - on) * each, key + bend.semitones()))
            .toList();
    return new PlacedNote(at, end, struck(), reached(), velocity, Handling.of(struck(), curve));
  }

  /** MIDI number, with fractions, of the pitch it has at its end. */
  public double last() {
    return bends.isEmpty() ? key : key + bends.get(bends.size() - 1).semitones();
  }
}

package hingetone.review;

import hingetone.take.PlacedNote;

/**
 * How the strokes lie against the beat: the steady part, which is a player's own lag or lead, and
 * the spread around it. Only notes within a sixth of a beat of a beat count, so that swung and
 * ornamental notes do not.
 *
 * @param notes how many notes count
 * @param meanMs how much later than the beat they are struck on average, in milliseconds
 * @param spreadMs the standard deviation around that
 */
public record Timing(int notes, double meanMs, double spreadMs) {
  private static final double NEAR = 1 / 6.0;

  /** Of fewer notes on a beat nothing is said. */
  private static final int FEWEST = 8;

  /** Whether there are enough notes on a beat to say something. */
  public boolean tells() {
    return notes >= FEWEST;
  }

  /** The timing of all notes. */
  public static Timing of(Played played) {
    double sum = 0;
    double squares = 0;
    int count = 0;
    for (PlacedNote note : played.notes()) {
      Played.Bar bar = played.barAt(note.at());
      double beats = bar.beat(note.at());
      double off = beats - Math.rint(beats);
      if (Math.abs(off) <= NEAR) {
        double ms = off * bar.beatLength() * played.msPerQuarter(note.at());
        sum += ms;
        squares += ms * ms;
        count++;
      }
    }
    if (count == 0) {
      return new Timing(0, 0, 0);
    }
    double mean = sum / count;
    return new Timing(count, mean, Math.sqrt(Math.max(0, squares / count - mean * mean)));
  }
}

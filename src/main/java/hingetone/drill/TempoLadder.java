package hingetone.drill;

import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * The tempo of an exercise: a step up after two clean rounds in a row, a step down after one that
 * did not go; in between it stays. So it never goes more than a step beyond what was clean twice.
 *
 * <p>Source: the transformed up-down method of H. Levitt, Transformed Up-Down Methods in
 * Psychoacoustics, J. Acoust. Soc. Am. 49 (1971), whose rule of two settles where about seven
 * rounds in ten are clean.
 *
 * @param start the tempo it began with
 * @param now the tempo of the next round
 * @param cleanInARow clean rounds in a row at that tempo, 0 or 1
 * @param cleanTwice the fastest tempo that was clean twice in a row; empty for none yet
 * @param rises how often it rose since it began or fell
 */
public record TempoLadder(
    Tempo start, Tempo now, int cleanInARow, Optional<Tempo> cleanTwice, int rises) {
  /** A round with this score or more is clean; below the other it did not go. */
  public static final double CLEAN = 0.8;

  static final double POOR = 0.6;

  private static final BigDecimal STEP = new BigDecimal("0.05");
  private static final BigDecimal LEAST_STEP = BigDecimal.valueOf(2);

  /** A ladder that begins at a tempo. */
  public static TempoLadder from(Tempo start) {
    return new TempoLadder(start, start, 0, Optional.empty(), 0);
  }

  /** The ladder after a round with a score, 0 to 1. */
  public TempoLadder after(double score) {
    if (score < POOR) {
      return new TempoLadder(start, stepped(-1), 0, cleanTwice, 0);
    }
    if (score < CLEAN) {
      return new TempoLadder(start, now, 0, cleanTwice, rises);
    }
    if (cleanInARow == 0) {
      return new TempoLadder(start, now, 1, cleanTwice, rises);
    }
    Tempo clean = cleanTwice.filter(fastest -> fastest.bpm().compareTo(now.bpm()) > 0).orElse(now);
    return new TempoLadder(start, stepped(1), 0, Optional.of(clean), rises + 1);
  }

  /** The same from its start again, as for something harder. */
  TempoLadder again() {
    return new TempoLadder(start, start, 0, cleanTwice, 0);
  }

  /** A twentieth of the tempo, two beats a minute at least, whole beats. */
  private Tempo stepped(int direction) {
    BigDecimal step = now.bpm().multiply(STEP).setScale(0, RoundingMode.HALF_UP).max(LEAST_STEP);
    return Tempo.nearest(now.bpm().add(step.multiply(BigDecimal.valueOf(direction))));
  }
}

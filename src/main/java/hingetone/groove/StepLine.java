package hingetone.groove;

import hingetone.time.Meter;
import java.util.List;

/**
 * A line of signs, one a step, over one or more bars.
 *
 * <p>In a groove for any meter it is one bar drawn by the beat instead: a cell for beat 1, one for
 * the other strong beats and one for the weak beats, {@code X. x. ..}; it is then laid out for each
 * meter.
 *
 * @param bars the signs of each bar, or, drawn by the beat, the three cells
 * @param byBeat whether it is drawn by the beat
 */
public record StepLine(List<String> bars, boolean byBeat) {
  public static final char NOTHING = '.';
  public static final char HOLD = '-';

  public StepLine {
    bars = List.copyOf(bars);
  }

  /** How many bars it lasts. */
  public int length() {
    return byBeat ? 1 : bars.size();
  }

  /** The signs of a bar, counted from 0 and coming round again. */
  public String signs(int bar, Meter meter) {
    if (!byBeat) {
      return bars.get(bar % bars.size());
    }
    StringBuilder signs = new StringBuilder();
    for (int beat = 1; beat <= meter.beatsPerBar(); beat++) {
      boolean strong = meter.strongBeats().contains(beat);
      signs.append(fitted(bars.get(beat == 1 ? 0 : strong ? 1 : 2), meter));
    }
    return signs.toString();
  }

  /**
   * A cell of two signs as a meter's beat takes it: where the beat divides in three its second half
   * falls on the third eighth, and where the beat is an eighth itself only the first sign counts.
   */
  static String fitted(String cell, Meter meter) {
    if (meter.isCompound()) {
      char between = cell.charAt(1) == HOLD ? HOLD : NOTHING;
      return cell.substring(0, 1) + between + cell.substring(1);
    }
    return meter.denominator() > 4 ? cell.substring(0, 1) : cell;
  }
}

package hingetone.groove;

import hingetone.time.Beats;
import hingetone.time.Meter;

/**
 * Straight, or swung by a stated amount.
 *
 * @param percent where the off-beat lies in its pair of notes, 50 (straight) to 75; 66 is close to
 *     a triplet's two to one
 * @param pair the length of the pair in quarter notes: 1 for swung eighths, 1/2 for sixteenths
 */
public record Feel(int percent, Beats pair) {
  public static final int STRAIGHT_PERCENT = 50;
  public static final int MOST_PERCENT = 75;
  public static final Feel STRAIGHT = new Feel(STRAIGHT_PERCENT, Beats.ONE);

  public Feel {
    if (percent < STRAIGHT_PERCENT || percent > MOST_PERCENT) {
      throw new IllegalArgumentException("swing is 50 to 75 percent, not " + percent);
    }
  }

  public Feel withPercent(int newPercent) {
    return new Feel(newPercent, pair);
  }

  /**
   * Where a place drawn straight is played, exact: with 62 percent the second eighth of a beat
   * comes at 62/100 of the beat. Places that divide the pair in threes are triplets and stay; so
   * does everything in meters counted in eighths, whose beats have their own division.
   *
   * @param inBar quarter notes from the bar line
   */
  public Beats place(Beats inBar, Meter meter) {
    Beats inPair = inBar.modulo(pair).dividedBy(pair);
    if (percent == STRAIGHT_PERCENT || meter.denominator() > 4 || !isHalved(inPair)) {
      return inBar;
    }
    Beats offBeat = Beats.of(percent, 100);
    Beats half = Beats.of(1, 2);
    Beats moved =
        inPair.isAfter(half)
            ? offBeat.plus(inPair.minus(half).times(2).times(Beats.ONE.minus(offBeat)))
            : inPair.times(2).times(offBeat);
    return inBar.minus(inPair.times(pair)).plus(moved.times(pair));
  }

  private static boolean isHalved(Beats inPair) {
    return Long.bitCount(inPair.denominator()) == 1;
  }

  /** For people: {@code straight} or {@code swing 62%}. */
  @Override
  public String toString() {
    if (percent == STRAIGHT_PERCENT) {
      return "straight";
    }
    return "swing " + percent + "%" + (pair.equals(Beats.ONE) ? "" : " sixteenths");
  }
}

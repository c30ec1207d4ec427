package hingetone.sound;

/**
 * A sound made to last longer at its own pitch: overlap-add of pieces, each taken from where it
 * goes on most like the one before (WSOLA; Verhelst and Roelands, ICASSP 1993). Pieces of 40 ms,
 * Hann windows that overlap by half, looked for 10 ms around their place.
 *
 * <pre>{@code TimeStretch.of(mono, 44_100, 2);   // twice as long}</pre>
 */
public final class TimeStretch {
  private static final double PIECE_SECONDS = 0.04;
  private static final double REACH_SECONDS = 0.01;
  private static final int COARSE = 4;

  private final float[] sound;
  private final int piece;
  private final int hop;
  private final int reach;

  private TimeStretch(float[] sound, double rate) {
    this.sound = sound;
    this.hop = Math.max(COARSE, (int) (rate * PIECE_SECONDS / 2));
    this.piece = 2 * hop;
    this.reach = (int) (rate * REACH_SECONDS);
  }

  /**
   * The sound, longer.
   *
   * @param mono its samples
   * @param rate samples a second
   * @param times how many times as long, 1 and more
   */
  public static float[] of(float[] mono, double rate, double times) {
    return new TimeStretch(mono, rate).stretched(times);
  }

  private float[] stretched(double times) {
    float[] out = new float[(int) Math.round(sound.length * times)];
    int natural = 0;
    for (int k = -1; k * hop < out.length; k++) {
      int wanted = (int) Math.round(k * hop / times);
      int from = k < 0 ? -hop : likest(wanted, natural);
      add(out, from, k * hop);
      natural = from + hop;
    }
    return out;
  }

  /** Where near a place the sound is most like what would follow by nature. */
  private int likest(int wanted, int natural) {
    int coarse = best(wanted, natural, reach, COARSE);
    return best(coarse, natural, COARSE - 1, 1);
  }

  private int best(int middle, int natural, int around, int step) {
    int best = middle;
    double most = Double.NEGATIVE_INFINITY;
    for (int shift = -around; shift <= around; shift += step) {
      double like = likeness(middle + shift, natural, step);
      if (like > most) {
        most = like;
        best = middle + shift;
      }
    }
    return best;
  }

  /** The cross-correlation of two pieces, normalized by the strength of the one that is tried. */
  private double likeness(int tried, int natural, int step) {
    double product = 0;
    double strength = 1e-9;
    for (int i = 0; i < piece; i += step) {
      double sample = at(tried + i);
      product += sample * at(natural + i);
      strength += sample * sample;
    }
    return product / Math.sqrt(strength);
  }

  private float at(int place) {
    return place < 0 || place >= sound.length ? 0 : sound[place];
  }

  private void add(float[] out, int from, int to) {
    for (int i = 0; i < piece; i++) {
      int place = to + i;
      if (place >= 0 && place < out.length) {
        double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / piece);
        out[place] += (float) (window * at(from + i));
      }
    }
  }
}

package hingetone.sound;

/**
 * Estimates the peak of the continuous signal between the samples, by fourfold oversampling.
 *
 * <p>Source: ITU-R BS.1770-4, Annex 2, with its 48-tap, four-phase filter. The estimate for a frame
 * comes {@value #DELAY} frames after it.
 */
public final class TruePeak {
  /** Frames by which the estimate trails the input: half the filter. */
  static final int DELAY = 6;

  private static final int TAPS = 12;

  /** Phases 0 and 1 of the filter; phases 2 and 3 are phases 1 and 0 backwards. */
  private static final double[][] HALF = {
    {
      0.0017089843750, 0.0109863281250, -0.0196533203125, 0.0332031250000, -0.0594482421875,
      0.1373291015625, 0.9721679687500, -0.1022949218750, 0.0476074218750, -0.0266113281250,
      0.0148925781250, -0.0083007812500
    },
    {
      -0.0291748046875, 0.0292968750000, -0.0517578125000, 0.0891113281250, -0.1665039062500,
      0.4650878906250, 0.7797851562500, -0.2003173828125, 0.1015625000000, -0.0582275390625,
      0.0330810546875, -0.0189208984375
    }
  };

  private static final float[][] PHASES = phases();

  /** The last inputs twice over, so that a window is always in one piece. */
  private final float[] history = new float[2 * TAPS];

  private int next;

  private static float[][] phases() {
    float[][] phases = new float[4][TAPS];
    for (int tap = 0; tap < TAPS; tap++) {
      for (int phase = 0; phase < 2; phase++) {
        phases[phase][tap] = (float) HALF[phase][tap];
        phases[3 - phase][TAPS - 1 - tap] = (float) HALF[phase][tap];
      }
    }
    return phases;
  }

  /** Takes one sample; gives the largest magnitude around the sample {@link #DELAY} earlier. */
  public float next(float sample) {
    history[next] = sample;
    history[next + TAPS] = sample;
    next = (next + 1) % TAPS;
    float peak = Math.abs(history[next + TAPS - DELAY - 1]);
    for (float[] phase : PHASES) {
      float sum = 0;
      for (int tap = 0; tap < TAPS; tap++) {
        sum += phase[tap] * history[next + TAPS - 1 - tap];
      }
      peak = Math.max(peak, Math.abs(sum));
    }
    return peak;
  }
}

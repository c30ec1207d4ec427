package hingetone.sound.level;

import java.util.Arrays;

/**
 * Estimates the peaks of a continuous stereo signal between its samples, by fourfold oversampling.
 *
 * <p>Source: ITU-R BS.1770-4, Annex 2, with its 48-tap, four-phase filter. The estimate for a frame
 * comes {@value #DELAY} frames after it. The filter is only run where the samples around are great
 * enough for it to find a peak that matters.
 */
public final class TruePeak {
  /** Frames by which the estimate trails the input: half the filter. */
  public static final int DELAY = 6;

  private static final int TAPS = 12;
  private static final int BEFORE = TAPS - 1;
  private static final int CHUNK = 64;

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

  /** No phase gives more than so many times the greatest sample that it sees: 2.02. */
  private static final float MOST = most();

  private final float[] left = new float[BEFORE + CHUNK];
  private final float[] right = new float[BEFORE + CHUNK];
  private final float[] sums = new float[CHUNK];

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

  private static float most() {
    double most = 0;
    for (double[] phase : HALF) {
      most = Math.max(most, Arrays.stream(phase).map(Math::abs).sum());
    }
    return (float) most;
  }

  /**
   * Takes interleaved stereo; gives for each frame the largest magnitude of both channels around
   * the frame {@link #DELAY} earlier, or any smaller one where that does not rise above a level.
   *
   * @param above the level
   * @param peaks takes the magnitudes, one a frame
   */
  public void next(float[] stereo, int frames, float above, float[] peaks) {
    for (int from = 0; from < frames; from += CHUNK) {
      int count = Math.min(CHUNK, frames - from);
      take(stereo, from, count);
      Arrays.fill(peaks, from, from + count, 0);
      float least = above / MOST;
      if (greatest(left, count) > least) {
        raise(left, count, peaks, from);
      }
      if (greatest(right, count) > least) {
        raise(right, count, peaks, from);
      }
      System.arraycopy(left, count, left, 0, BEFORE);
      System.arraycopy(right, count, right, 0, BEFORE);
    }
  }

  private void take(float[] stereo, int from, int count) {
    for (int i = 0; i < count; i++) {
      left[BEFORE + i] = stereo[2 * (from + i)];
      right[BEFORE + i] = stereo[2 * (from + i) + 1];
    }
  }

  private static float greatest(float[] channel, int count) {
    float greatest = 0;
    for (int i = 0; i < BEFORE + count; i++) {
      greatest = Math.max(greatest, Math.abs(channel[i]));
    }
    return greatest;
  }

  /** Loops over frames within a tap, which a compiler turns into vectors. */
  private void raise(float[] channel, int count, float[] peaks, int from) {
    for (int i = 0; i < count; i++) {
      peaks[from + i] = Math.max(peaks[from + i], Math.abs(channel[BEFORE - DELAY + i]));
    }
    for (float[] phase : PHASES) {
      Arrays.fill(sums, 0, count, 0);
      for (int tap = 0; tap < TAPS; tap++) {
        float weight = phase[tap];
        int place = BEFORE - tap;
        for (int i = 0; i < count; i++) {
          sums[i] += weight * channel[place + i];
        }
      }
      for (int i = 0; i < count; i++) {
        peaks[from + i] = Math.max(peaks[from + i], Math.abs(sums[i]));
      }
    }
  }
}

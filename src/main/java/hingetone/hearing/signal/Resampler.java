package hingetone.hearing.signal;

import java.util.Arrays;

/**
 * Changes the rate of a sound to {@link Sampling#RATE}, block by block, by a windowed sinc
 * (band-limited interpolation after J. O. Smith, "Digital Audio Resampling Home Page", 1984 on).
 */
public final class Resampler {
  private static final int ZERO_CROSSINGS = 16;
  private static final int PHASES = 256;

  /** What passes of the lower of the two bands. */
  private static final double PASS = 0.92;

  private final double step;
  private final int reach;
  private final float[][] kernels;
  private float[] kept;
  private double place;

  /**
   * @param rate samples a second that come in
   */
  public Resampler(double rate) {
    step = rate / Sampling.RATE;
    double cutoff = PASS * Math.min(1, 1 / step);
    reach = (int) Math.ceil(ZERO_CROSSINGS / cutoff);
    kernels = new float[PHASES + 1][];
    for (int phase = 0; phase <= PHASES; phase++) {
      kernels[phase] = kernel((double) phase / PHASES, cutoff);
    }
    kept = new float[reach];
    place = reach;
  }

  /** The weights of the samples from {@code reach − 1} before to {@code reach} after a place. */
  private float[] kernel(double fraction, double cutoff) {
    float[] kernel = new float[2 * reach];
    double sum = 0;
    for (int i = 0; i < kernel.length; i++) {
      double x = i - (reach - 1) - fraction;
      double window = Math.abs(x) >= reach ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x / reach);
      double sinc = x == 0 ? 1 : Math.sin(Math.PI * cutoff * x) / (Math.PI * cutoff * x);
      kernel[i] = (float) (window * sinc);
      sum += kernel[i];
    }
    for (int i = 0; i < kernel.length; i++) {
      kernel[i] /= (float) sum;
    }
    return kernel;
  }

  /** The next samples at the new rate; they come late by the filter's reach. */
  public float[] next(float[] samples) {
    int count = samples.length;
    float[] all = Arrays.copyOf(kept, kept.length + count);
    System.arraycopy(samples, 0, all, kept.length, count);
    int most = (int) (Math.max(0, all.length - reach - place) / step) + 2;
    float[] out = new float[most];
    int made = 0;
    while ((int) place + reach < all.length) {
      int whole = (int) place;
      float[] kernel = kernels[(int) Math.round((place - whole) * PHASES)];
      float sum = 0;
      int from = whole - reach + 1;
      for (int i = 0; i < kernel.length; i++) {
        sum += kernel[i] * all[from + i];
      }
      out[made++] = sum;
      place += step;
    }
    int drop = Math.max(0, Math.min((int) place - reach, all.length));
    kept = Arrays.copyOfRange(all, drop, all.length);
    place -= drop;
    return Arrays.copyOf(out, made);
  }

  /** What is left when the sound has ended. */
  public float[] rest() {
    return next(new float[reach]);
  }
}

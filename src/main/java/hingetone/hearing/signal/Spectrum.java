package hingetone.hearing.signal;

import org.jtransforms.fft.FloatFFT_1D;

/** Magnitude spectra of windowed stretches of sound, all of one size. */
public final class Spectrum {
  private final int size;
  private final FloatFFT_1D transform;
  private final float[] window;
  private final float[] work;

  /**
   * @param size samples, a power of two
   */
  public Spectrum(int size) {
    this.size = size;
    this.transform = new FloatFFT_1D(size);
    this.window = hann(size);
    this.work = new float[size];
  }

  /** A Hann window scaled so that a sine of amplitude 1 in a bin's middle has magnitude 1. */
  private static float[] hann(int size) {
    float[] window = new float[size];
    for (int i = 0; i < size; i++) {
      window[i] = (float) ((1 - Math.cos(2 * Math.PI * i / size)) * 2 / size);
    }
    return window;
  }

  /** Hertz from one bin to the next. */
  public double binHertz() {
    return (double) Sampling.RATE / size;
  }

  public int size() {
    return size;
  }

  /** The magnitudes of the bins 0 to size / 2 of the samples from a place on. */
  public float[] magnitudes(float[] samples, int from) {
    for (int i = 0; i < size; i++) {
      work[i] = samples[from + i] * window[i];
    }
    transform.realForward(work);
    float[] magnitudes = new float[size / 2 + 1];
    magnitudes[0] = Math.abs(work[0]);
    magnitudes[size / 2] = Math.abs(work[1]);
    for (int bin = 1; bin < size / 2; bin++) {
      float re = work[2 * bin];
      float im = work[2 * bin + 1];
      magnitudes[bin] = (float) Math.sqrt(re * re + im * im);
    }
    return magnitudes;
  }
}

package hingetone.hearing.signal;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * How much of a spectrum is new, vibrato left out: SuperFlux (Böck and Widmer, "Maximum filter
 * vibrato suppression for onset detection", DAFx 2013). Logarithmic bands, 24 an octave, are
 * compared with the loudest of their neighbours a little before; only what rose counts.
 */
final class Flux {
  private static final int BANDS_AN_OCTAVE = 24;
  private static final double LOWEST_HERTZ = 60;
  private static final double HIGHEST_HERTZ = 9000;

  /** Slices back to what a frame is compared with. */
  private static final int LAG = 3;

  /** Where the noise of a plectrum lies. */
  static final int BRIGHT_HERTZ = 3000;

  private final int[] starts;
  private final int bright;
  private final float[][] weights;
  private final Deque<float[]> before = new ArrayDeque<>();

  /**
   * What rose.
   *
   * @param all in all bands
   * @param bright in those above {@value #BRIGHT_HERTZ} Hz
   */
  record Rise(float all, float bright) {}

  Flux(Spectrum spectrum) {
    int octaves = (int) Math.ceil(Math.log(HIGHEST_HERTZ / LOWEST_HERTZ) / Math.log(2));
    java.util.List<Integer> firsts = new java.util.ArrayList<>();
    java.util.List<float[]> shapes = new java.util.ArrayList<>();
    int last = -1;
    for (int band = 1; band < octaves * BANDS_AN_OCTAVE; band++) {
      double low = bin(spectrum, band - 1);
      double middle = bin(spectrum, band);
      double high = bin(spectrum, band + 1);
      int from = (int) Math.ceil(low);
      int to = Math.min((int) Math.floor(high), spectrum.size() / 2);
      if (to - from < 1 || from > spectrum.size() / 2) {
        from = (int) Math.round(middle);
        to = from;
        if (from == last || from > spectrum.size() / 2) {
          continue;
        }
      }
      last = from;
      float[] shape = new float[to - from + 1];
      float sum = 0;
      for (int i = from; i <= to; i++) {
        double up = (i - low) / (middle - low);
        double down = (high - i) / (high - middle);
        shape[i - from] = (float) Math.max(1e-3, Math.min(up, down));
        sum += shape[i - from];
      }
      for (int i = 0; i < shape.length; i++) {
        shape[i] /= sum;
      }
      firsts.add(from);
      shapes.add(shape);
    }
    starts = firsts.stream().mapToInt(Integer::intValue).toArray();
    weights = shapes.toArray(float[][]::new);
    bright = (int) firsts.stream().filter(f -> f * spectrum.binHertz() < BRIGHT_HERTZ).count();
  }

  private static double bin(Spectrum spectrum, int band) {
    double hertz = LOWEST_HERTZ * Math.pow(2, (double) band / BANDS_AN_OCTAVE);
    return hertz / spectrum.binHertz();
  }

  /**
   * What is new in the next frame, in decades summed over the bands.
   *
   * @param magnitudes its spectrum
   * @param floor the magnitude below which nothing counts
   */
  Rise next(float[] magnitudes, double floor) {
    float[] bands = new float[starts.length];
    for (int b = 0; b < bands.length; b++) {
      float sum = 0;
      for (int i = 0; i < weights[b].length; i++) {
        sum += weights[b][i] * magnitudes[starts[b] + i];
      }
      bands[b] = (float) Math.log10(1 + sum / floor);
    }
    before.addLast(bands);
    if (before.size() <= LAG) {
      return new Rise(0, 0);
    }
    float[] old = before.removeFirst();
    float all = 0;
    float high = 0;
    for (int b = 0; b < bands.length; b++) {
      float loudest =
          Math.max(
              old[b], Math.max(old[Math.max(0, b - 1)], old[Math.min(b + 1, bands.length - 1)]));
      float rise = Math.max(0, bands[b] - loudest);
      all += rise;
      high += b >= bright ? rise : 0;
    }
    return new Rise(all, high);
  }
}

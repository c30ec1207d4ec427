package hingetone.hearing;

import hingetone.hearing.signal.Sampling;

/** The partials of pitches in one long spectrum of a note, and in one from before it. */
final class Partials {
  /** How far a partial may lie from its multiple, as a ratio: 40 cents. */
  private static final double APART = Math.pow(2, 40.0 / 1200) - 1;

  private static final double FLOOR_DB = -60;

  private final float[] after;
  private final float[] before;
  private final double binHertz;
  private final double loudest;
  private final double[] explained;

  Partials(float[] after, float[] before, double binHertz) {
    this.after = after;
    this.before = before;
    this.binHertz = binHertz;
    double peak = 1e-6;
    for (int bin = (int) (70 / binHertz); bin < bin(5000); bin++) {
      peak = Math.max(peak, after[bin]);
    }
    loudest = Sampling.decibels(peak);
    explained = new double[after.length];
  }

  int bin(double hertz) {
    return (int) Math.min(after.length - 2.0, Math.round(hertz / binHertz));
  }

  /** The bin of the highest peak near a frequency. */
  int peak(double hertz) {
    double reach = Math.max(1.2 * binHertz, hertz * APART);
    int best = bin(hertz);
    for (int bin = Math.max(1, bin(hertz - reach)); bin <= bin(hertz + reach); bin++) {
      best = after[bin] > after[best] ? bin : best;
    }
    return best;
  }

  /** Whether a bin is a peak of the spectrum and not the flank of one. */
  boolean isPeak(int bin) {
    return bin > 0 && after[bin] >= after[bin - 1] && after[bin] >= after[bin + 1];
  }

  /** The level near a frequency in dB below the loudest partial, −60 at least. */
  double level(double hertz) {
    int bin = peak(hertz);
    double level = Math.max(FLOOR_DB, Sampling.decibels(after[bin]) - loudest);
    return isPeak(bin) ? level : Math.max(FLOOR_DB, level - 12);
  }

  /** By how many dB that rose since before the note, −20 to 40. */
  double rise(double hertz) {
    int bin = peak(hertz);
    double old = Math.max(before[bin], Math.max(before[bin - 1], before[bin + 1]));
    double floor = loudest + FLOOR_DB;
    double rise =
        Math.max(floor, Sampling.decibels(after[bin])) - Math.max(floor, Sampling.decibels(old));
    return Math.max(-20, Math.min(40, rise));
  }

  /**
   * Where the peak near a frequency lies exactly: a parabola through the logarithms of its bins.
   */
  double exact(double hertz) {
    int bin = peak(hertz);
    double a = Sampling.decibels(after[bin - 1]);
    double b = Sampling.decibels(after[bin]);
    double c = Sampling.decibels(after[bin + 1]);
    double curve = a - 2 * b + c;
    double shift = curve >= 0 ? 0 : 0.5 * (a - c) / curve;
    return (bin + Math.max(-0.5, Math.min(0.5, shift))) * binHertz;
  }

  /** The share of the spectrum's strength (square root of power) near the multiples of pitches. */
  double share(double... pitches) {
    java.util.Arrays.fill(explained, 0);
    int top = bin(4000);
    for (double hertz : pitches) {
      for (int k = 1; k * hertz < 4000; k++) {
        int peak = peak(k * hertz);
        for (int bin = Math.max(0, peak - 2); bin <= Math.min(top, peak + 2); bin++) {
          explained[bin] = 1;
        }
      }
    }
    double in = 0;
    double all = 1e-9;
    for (int bin = bin(70); bin <= top; bin++) {
      all += after[bin];
      in += explained[bin] * after[bin];
    }
    return in / all;
  }
}

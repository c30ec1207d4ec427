package hingetone.hearing;

import hingetone.hearing.signal.Sampling;
import java.util.ArrayList;
import java.util.List;

/** What speaks for and against two strings sounding at once with two given pitches. */
final class PairEvidence {
  /** The intervals of double stops, in semitones: thirds to sixths, and the octave. */
  static final int[] INTERVALS = {3, 4, 5, 7, 8, 9, 12};

  private static final int PARTIALS = 8;

  private final Partials partials;
  private final double heard;
  private final double dip;
  private final double voiced;
  private final double level;

  /**
   * @param heard the pitch that one string alone would have, MIDI number with fractions
   * @param dip how far from periodic that is
   * @param voiced the share of the note in which there is a pitch
   */
  PairEvidence(Partials partials, double heard, double dip, double voiced, double level) {
    this.partials = partials;
    this.heard = heard;
    this.dip = dip;
    this.voiced = voiced;
    this.level = level;
  }

  double[] measures(double low, int interval) {
    double a = tuned(Sampling.hertz(low));
    double b = tuned(Sampling.hertz(low + interval));
    List<Double> m = new ArrayList<>();
    for (int k = 1; k <= 3; k++) {
      m.add(partials.level(k * a));
    }
    for (int k = 1; k <= 3; k++) {
      m.add(partials.level(k * b));
    }
    Own ownA = own(a, b);
    Own ownB = own(b, a);
    m.add(ownA.level);
    m.add(ownB.level);
    m.add(ownA.weakest);
    m.add(ownB.weakest);
    m.add(ownA.rise);
    m.add(ownB.rise);
    double both = partials.share(a, b);
    m.add(both);
    m.add(both - partials.share(a));
    m.add(both - partials.share(b));
    m.add(both - (Double.isNaN(heard) ? 0 : partials.share(Sampling.hertz(heard))));
    m.add(partials.level(a / 2));
    m.add(partials.level(a * 1.5) - Math.max(partials.level(a), partials.level(2 * a)));
    m.add(partials.level(a / 3));
    m.add(near(heard - low));
    m.add(near(heard - low - interval));
    m.add(Double.isNaN(heard) ? 2 : Math.max(-2, Math.min(2, (heard - low) / 12)));
    m.add(dip);
    m.add(voiced);
    m.add(evenOverOdd(a));
    m.add(low / 10);
    m.add(level);
    m.add(12 * Math.abs(Math.log(b / a) / Math.log(2) - interval / 12.0));
    for (int i : INTERVALS) {
      m.add(i == interval ? 1.0 : 0.0);
    }
    return m.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** What a pitch has that another has not: partials away from the other's. */
  private record Own(double level, double weakest, double rise) {}

  private Own own(double hertz, double other) {
    double level = 0;
    double weakest = 0;
    double rise = 0;
    double weights = 0;
    int count = 0;
    for (int k = 1; k <= PARTIALS && count < 4; k++) {
      double multiple = k * hertz / other;
      double nearest = Math.rint(multiple);
      double cents =
          nearest < 1 ? 1200 : Math.abs(1200 * Math.log(multiple / nearest) / Math.log(2));
      if (cents > 60) {
        double here = partials.level(k * hertz);
        double weight = 1.0 / k;
        level += weight * here;
        rise += weight * partials.rise(k * hertz);
        weakest = count < 3 ? Math.min(weakest, here) : weakest;
        weights += weight;
        count++;
      }
    }
    if (count == 0) {
      return new Own(-30, -30, partials.rise(hertz));
    }
    return new Own(level / weights, weakest, rise / weights);
  }

  /** A pitch moved to where its lower partials lie. */
  double tuned(double hertz) {
    double sum = 0;
    double weights = 0;
    for (int k = 1; k <= 4; k++) {
      double found = partials.exact(k * hertz) / k;
      if (Math.abs(12 * Math.log(found / hertz) / Math.log(2)) < 0.5) {
        double weight = k * Math.pow(10, partials.level(k * hertz) / 20);
        sum += weight * found;
        weights += weight;
      }
    }
    return weights == 0 ? hertz : sum / weights;
  }

  private double evenOverOdd(double hertz) {
    double even = 0;
    double odd = 0;
    for (int k = 1; k <= 8; k++) {
      if (k % 2 == 0) {
        even += partials.level(k * hertz);
      } else {
        odd += partials.level(k * hertz);
      }
    }
    return (even - odd) / 4;
  }

  private static double near(double semitones) {
    return Double.isNaN(semitones) ? 1 : Math.min(1, Math.abs(semitones));
  }
}

package hingetone.hearing.signal;

import java.util.ArrayList;
import java.util.List;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * The pitches that a short stretch of sound may have, each with its probability.
 *
 * <p>The difference function and its cumulative mean are those of de Cheveigné and Kawahara, "YIN,
 * a fundamental frequency estimator for speech and music", JASA 111 (2002), equations 6 and 8, by
 * FFT. Instead of one threshold a distribution of them decides, as in Mauch and Dixon, "pYIN",
 * ICASSP 2014: Beta(2, 18), whose mean is 0.1.
 */
public final class Yin {
  static final double LOWEST_HERTZ = 60;
  public static final double HIGHEST_HERTZ = 1400;

  /** Samples compared with their like one period later: 46 ms. */
  static final int WINDOW = 1024;

  private static final int LONGEST = (int) Math.ceil(Sampling.RATE / LOWEST_HERTZ) + 1;
  private static final int SHORTEST = (int) Math.floor(Sampling.RATE / HIGHEST_HERTZ) - 1;

  /** Samples that an estimate needs. */
  static final int FRAME = WINDOW + LONGEST + 1;

  private static final int SIZE = 2048;
  private static final int THRESHOLD_SHAPE = 18;

  /**
   * What a dip gets where no threshold takes one: pYIN's p_a, which is 0.01 there, and which it
   * gives to the deepest. A bend blurs the dips; the path needs them all the same. In the noise of
   * an attack two or three periods look better than one.
   */
  private static final double ANYWAY = 0.1;

  private static final double ABOUT_AS_DEEP = 0.22;

  /** Periods below this are measured over several of them, for the sampling is coarse there. */
  private static final double FINE_FROM = 90;

  private final FloatFFT_1D transform = new FloatFFT_1D(SIZE);
  private final float[] whole = new float[SIZE];
  private final float[] head = new float[SIZE];
  private final double[] dips = new double[LONGEST + 2];

  /**
   * A pitch that may be.
   *
   * @param midi MIDI number with fractions
   * @param probability 0 to 1; those of a frame add up to 1 at most
   * @param dip the cumulative mean normalised difference: 0 for a perfectly periodic sound
   */
  record Candidate(double midi, double probability, double dip) {}

  /** The candidates of the {@link #FRAME} samples from a place on, shortest period first. */
  List<Candidate> candidates(float[] samples, int from) {
    difference(samples, from);
    normalise();
    List<Candidate> found = new ArrayList<>();
    double lowest = 1;
    for (int lag = SHORTEST; lag <= LONGEST; lag++) {
      boolean dip = dips[lag] < dips[lag - 1] && dips[lag] <= dips[lag + 1];
      if (dip && dips[lag] < lowest) {
        double probability = thresholdsBelow(lowest) - thresholdsBelow(dips[lag]);
        lowest = dips[lag];
        found.add(new Candidate(pitch(lag), probability, dips[lag]));
      }
    }
    shareOut(found, lowest);
    return found;
  }

  /** Gives what no threshold takes to the shortest period that is about as good as the best. */
  private static void shareOut(List<Candidate> found, double lowest) {
    for (int i = 0; i < found.size(); i++) {
      Candidate candidate = found.get(i);
      if (candidate.dip <= lowest + ABOUT_AS_DEEP) {
        double more = ANYWAY * thresholdsBelow(lowest);
        found.set(i, new Candidate(candidate.midi, candidate.probability + more, candidate.dip));
        return;
      }
    }
  }

  /** The share of thresholds below a value: the distribution function of Beta(2, 18). */
  static double thresholdsBelow(double value) {
    double x = Math.min(1, Math.max(0, value));
    return 1 - Math.pow(1 - x, THRESHOLD_SHAPE) * (1 + THRESHOLD_SHAPE * x);
  }

  /** d(lag) = energy here + energy one lag later − 2 × correlation. */
  private void difference(float[] samples, int from) {
    System.arraycopy(samples, from, whole, 0, FRAME);
    java.util.Arrays.fill(whole, FRAME, SIZE, 0);
    System.arraycopy(samples, from, head, 0, WINDOW);
    java.util.Arrays.fill(head, WINDOW, SIZE, 0);
    double here = 0;
    for (int i = 0; i < WINDOW; i++) {
      here += (double) head[i] * head[i];
    }
    correlate();
    double there = here;
    for (int lag = 0; lag <= LONGEST + 1 && lag < dips.length; lag++) {
      dips[lag] = Math.max(0, here + there - 2 * whole[lag]);
      if (lag <= LONGEST) {
        float leaving = samples[from + lag];
        float coming = samples[from + lag + WINDOW];
        there += (double) coming * coming - (double) leaving * leaving;
      }
    }
  }

  /** Leaves in {@code whole} its correlation with {@code head}. */
  private void correlate() {
    transform.realForward(whole);
    transform.realForward(head);
    whole[0] *= head[0];
    whole[1] *= head[1];
    for (int i = 2; i < SIZE; i += 2) {
      float re = whole[i] * head[i] + whole[i + 1] * head[i + 1];
      float im = whole[i + 1] * head[i] - whole[i] * head[i + 1];
      whole[i] = re;
      whole[i + 1] = im;
    }
    transform.realInverse(whole, true);
  }

  private void normalise() {
    double sum = 0;
    dips[0] = 1;
    for (int lag = 1; lag < dips.length; lag++) {
      sum += dips[lag];
      dips[lag] = sum <= 0 ? 1 : dips[lag] * lag / sum;
    }
  }

  /** The pitch of a dip; of a short period measured at the last of several. */
  private double pitch(int lag) {
    double period = interpolated(lag);
    while (period < FINE_FROM && 2 * period < 2 * FINE_FROM) {
      int periods = (int) Math.floor(2 * FINE_FROM / period);
      return Sampling.midi(Sampling.RATE / refined(period, periods));
    }
    return Sampling.midi(Sampling.RATE / period);
  }

  /** Follows the dips from period to period, doubling, so that each step is sure of its dip. */
  private double refined(double period, int periods) {
    double best = period;
    for (int n = 2; n <= periods; n *= 2) {
      int near = (int) Math.round(best * n);
      int lag = near;
      for (int l = near - 2; l <= near + 2; l++) {
        lag = dips[l] < dips[lag] ? l : lag;
      }
      if (Math.abs(lag - near) == 2) {
        return best;
      }
      best = interpolated(lag) / n;
    }
    return best;
  }

  /** The lowest point of the parabola through a dip and its neighbours. */
  private double interpolated(int lag) {
    double before = dips[lag - 1];
    double after = dips[lag + 1];
    double curve = before - 2 * dips[lag] + after;
    return curve <= 0 ? lag : lag + 0.5 * (before - after) / curve;
  }
}

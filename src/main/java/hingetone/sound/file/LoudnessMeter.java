package hingetone.sound.file;

import hingetone.sound.TruePeak;
import java.util.ArrayList;
import java.util.List;

/**
 * Measures how loud a stereo stream is as a whole, and its true peak.
 *
 * <p>Source: ITU-R BS.1770-4: K-weighting, mean square over blocks of 400 ms that overlap by three
 * quarters, a gate at −70 LUFS and one at 10 LU below what passes that.
 */
public final class LoudnessMeter {
  private static final double ABSOLUTE_GATE = -70;
  private static final double RELATIVE_GATE = -10;

  /** Blocks are made of steps of 100 ms. */
  private static final int STEPS_A_SECOND = 10;

  private static final int STEPS_A_BLOCK = 4;

  private final Weighting left;
  private final Weighting right;
  private final TruePeak leftPeak = new TruePeak();
  private final TruePeak rightPeak = new TruePeak();
  private final int stepFrames;
  private final List<Double> steps = new ArrayList<>();
  private double squares;
  private int inStep;
  private float peak;

  /** A meter for a sample rate in frames a second. */
  public LoudnessMeter(int sampleRate) {
    left = new Weighting(sampleRate);
    right = new Weighting(sampleRate);
    stepFrames = sampleRate / STEPS_A_SECOND;
  }

  /** Takes interleaved stereo. */
  public void add(float[] stereo, int frames) {
    for (int i = 0; i < frames; i++) {
      peak = Math.max(peak, leftPeak.next(stereo[2 * i]));
      peak = Math.max(peak, rightPeak.next(stereo[2 * i + 1]));
      double l = left.next(stereo[2 * i]);
      double r = right.next(stereo[2 * i + 1]);
      squares += l * l + r * r;
      if (++inStep == stepFrames) {
        steps.add(squares / stepFrames);
        squares = 0;
        inStep = 0;
      }
    }
  }

  /** Integrated loudness in LUFS; negative infinity when nothing passes the gates. */
  public double integrated() {
    double gate = meanAbove(ABSOLUTE_GATE) + RELATIVE_GATE;
    return meanAbove(Math.max(gate, ABSOLUTE_GATE));
  }

  /** The true peak so far in dBTP, full scale being 0; negative infinity in silence. */
  public double truePeak() {
    return 20 * Math.log10(peak);
  }

  private double meanAbove(double gate) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i + STEPS_A_BLOCK <= steps.size(); i++) {
      double power = 0;
      for (double step : steps.subList(i, i + STEPS_A_BLOCK)) {
        power += step / STEPS_A_BLOCK;
      }
      if (loudness(power) > gate) {
        sum += power;
        count++;
      }
    }
    return count == 0 ? Double.NEGATIVE_INFINITY : loudness(sum / count);
  }

  private static double loudness(double power) {
    return -0.691 + 10 * Math.log10(power);
  }

  /** The K-weighting of one channel: a shelf for the head, then a high pass. */
  static final class Weighting {
    private final Biquad shelf;
    private final Biquad highPass;

    Weighting(int sampleRate) {
      shelf = shelf(sampleRate);
      highPass = highPass(sampleRate);
    }

    double next(double sample) {
      return highPass.next(shelf.next(sample));
    }

    /**
     * The shelf as an analogue prototype, so that it fits any sample rate; at 48,000 it gives the
     * standard's table 1. The three constants are those that solve for that table.
     */
    static Biquad shelf(int sampleRate) {
      double k = Math.tan(Math.PI * 1681.974450955533 / sampleRate);
      double q = 0.7071752369554196;
      double high = Math.pow(10, 3.999843853973347 / 20);
      double middle = Math.pow(high, 0.4996667741545416);
      double scale = 1 + k / q + k * k;
      return new Biquad(
          (high + middle * k / q + k * k) / scale,
          2 * (k * k - high) / scale,
          (high - middle * k / q + k * k) / scale,
          2 * (k * k - 1) / scale,
          (1 - k / q + k * k) / scale);
    }

    /** The high pass likewise; at 48,000 it gives the standard's table 2. */
    static Biquad highPass(int sampleRate) {
      double k = Math.tan(Math.PI * 38.13547087602444 / sampleRate);
      double q = 0.5003270373238773;
      double scale = 1 + k / q + k * k;
      return new Biquad(1, -2, 1, 2 * (k * k - 1) / scale, (1 - k / q + k * k) / scale);
    }
  }

  /** A second-order filter: numerator b0 b1 b2, denominator 1 a1 a2. */
  static final class Biquad {
    private final double b0;
    private final double b1;
    private final double b2;
    private final double a1;
    private final double a2;
    private double first;
    private double second;

    Biquad(double b0, double b1, double b2, double a1, double a2) {
      this.b0 = b0;
      this.b1 = b1;
      this.b2 = b2;
      this.a1 = a1;
      this.a2 = a2;
    }

    double next(double sample) {
      double out = b0 * sample + first;
      first = b1 * sample - a1 * out + second;
      second = b2 * sample - a2 * out;
      return out;
    }

    double[] coefficients() {
      return new double[] {b0, b1, b2, a1, a2};
    }
  }
}

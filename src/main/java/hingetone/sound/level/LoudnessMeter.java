package hingetone.sound.level;

import java.util.ArrayList;
import java.util.List;

/**
 * Measures how loud a stereo stream is as a whole. Its peaks are the {@link PeakMeter}'s.
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
  private final int stepFrames;
  private final List<Double> steps = new ArrayList<>();
  private double squares;
  private int inStep;

  /** A meter for a sample rate in frames a second. */
  public LoudnessMeter(int sampleRate) {
    left = new Weighting(sampleRate);
    right = new Weighting(sampleRate);
    stepFrames = sampleRate / STEPS_A_SECOND;
  }

  /** Takes interleaved stereo. */
  public void add(float[] stereo, int frames) {
    for (int from = 0; from < frames; ) {
      int to = Math.min(frames, from + stepFrames - inStep);
      squares += left.squares(stereo, 0, from, to) + right.squares(stereo, 1, from, to);
      inStep += to - from;
      from = to;
      if (inStep == stepFrames) {
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
    private double shelfFirst;
    private double shelfSecond;
    private double passFirst;
    private double passSecond;

    Weighting(int sampleRate) {
      shelf = shelf(sampleRate);
      highPass = highPass(sampleRate);
    }

    /** The sum of the squares of the weighted samples of one channel of interleaved stereo. */
    double squares(float[] stereo, int channel, int from, int to) {
      double first = shelfFirst;
      double second = shelfSecond;
      double third = passFirst;
      double fourth = passSecond;
      double sum = 0;
      for (int i = from; i < to; i++) {
        double sample = stereo[2 * i + channel];
        double headed = shelf.b0 * sample + first;
        first = shelf.b1 * sample + second - shelf.a1 * headed;
        second = shelf.b2 * sample - shelf.a2 * headed;
        double out = highPass.b0 * headed + third;
        third = highPass.b1 * headed + fourth - highPass.a1 * out;
        fourth = highPass.b2 * headed - highPass.a2 * out;
        sum += out * out;
      }
      shelfFirst = first;
      shelfSecond = second;
      passFirst = third;
      passSecond = fourth;
      return sum;
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

  /** The coefficients of a second-order filter: numerator b0 b1 b2, denominator 1 a1 a2. */
  record Biquad(double b0, double b1, double b2, double a1, double a2) {
    double[] coefficients() {
      return new double[] {b0, b1, b2, a1, a2};
    }
  }
}

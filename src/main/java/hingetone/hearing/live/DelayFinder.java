package hingetone.hearing.live;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Finds how much later a sound comes back in than it went out: where what came in matches what went
 * out best (a matched filter: G. L. Turin, An Introduction to Matched Filters, IRE Trans. Inform.
 * Theory 6, 1960).
 */
public final class DelayFinder {
  /** A match stands so far above what else there is. */
  private static final double CLEAR = 6;

  private DelayFinder() {}

  /** A click of 4 ms, from 1 to 4 kHz rising, which matches itself in one place only. */
  public static float[] click(int sampleRate) {
    float[] click = new float[sampleRate / 250];
    for (int i = 0; i < click.length; i++) {
      double t = (double) i / sampleRate;
      double part = (double) i / click.length;
      double window = Math.sin(Math.PI * part);
      click[i] = (float) (window * Math.sin(2 * Math.PI * (1000 * t + 375_000 * t * t)));
    }
    return click;
  }

  /**
   * Where a click begins in a recording, in samples.
   *
   * @return empty where nothing stands out
   */
  public static Optional<Integer> find(float[] recording, float[] click) {
    int places = recording.length - click.length;
    if (places < 3) {
      return Optional.empty();
    }
    double[] match = new double[places];
    double sum = 0;
    int best = 0;
    for (int at = 0; at < places; at++) {
      double product = 0;
      for (int i = 0; i < click.length; i++) {
        product += recording[at + i] * click[i];
      }
      match[at] = Math.abs(product);
      sum += match[at];
      best = match[at] > match[best] ? at : best;
    }
    boolean clear = match[best] > CLEAR * sum / places && match[best] > 1e-4;
    return clear ? Optional.of(best) : Optional.empty();
  }

  /** The middle of several delays and how far half of them lie from it at most. */
  public record Delay(double millis, double spread) {
    /** Of delays in milliseconds, at least one. */
    public static Delay of(List<Double> found) {
      double[] sorted = found.stream().mapToDouble(d -> d).sorted().toArray();
      double middle = sorted[sorted.length / 2];
      List<Double> away = new ArrayList<>();
      Arrays.stream(sorted).forEach(d -> away.add(Math.abs(d - middle)));
      away.sort(null);
      return new Delay(middle, away.get(away.size() / 2));
    }
  }
}

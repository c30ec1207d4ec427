package hingetone.hearing.signal;

import java.util.Arrays;
import java.util.Optional;
import org.jtransforms.fft.FloatFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/**
 * Finds the echoes that a delay adds to a sound, by the cepstrum: Bogert, Healy and Tukey, "The
 * quefrency alanysis of time series for echoes", 1963. An echo of strength m after d seconds makes
 * a peak of height m at d in the mean cepstrum, its repeats further peaks at 2d, 3d and so on; the
 * sound's own pitches lie far below 60 ms.
 *
 * <p>What undoes the echoes has the negated cepstrum of those peaks alone.
 */
public final class EchoFinder {
  /** Samples looked at together, and half of them from one look to the next: 3 s. */
  private static final int LOOK = 1 << 16;

  private static final int SIZE = 2 * LOOK;

  private static final int SHORTEST = (int) (0.06 * Sampling.RATE);
  private static final int LONGEST = (int) (1.3 * Sampling.RATE);

  /** The least strength of an echo that is undone. */
  private static final double LEAST = 0.2;

  /** Samples to each side that a peak may be spread over. */
  private static final int SPREAD = 6;

  private static final int MOST_REPEATS = 8;
  private static final double LEAST_TAP = 2e-3;

  private final FloatFFT_1D transform;
  private final float[] window = new float[LOOK];
  private final double[] logs = new double[SIZE / 2 + 1];
  private int filled;
  private int looks;

  public EchoFinder() {
    ConcurrencyUtils.setNumberOfThreads(1);
    transform = new FloatFFT_1D(SIZE);
  }

  /** Takes more of the sound, at {@link Sampling#RATE}. */
  public void take(float[] samples) {
    for (int from = 0; from < samples.length; ) {
      int count = Math.min(LOOK - filled, samples.length - from);
      System.arraycopy(samples, from, window, filled, count);
      filled += count;
      from += count;
      if (filled == LOOK) {
        look(LOOK);
        System.arraycopy(window, LOOK / 2, window, 0, LOOK / 2);
        filled = LOOK / 2;
      }
    }
  }

  private void look(int count) {
    float[] work = new float[SIZE];
    for (int i = 0; i < count; i++) {
      work[i] = (float) (window[i] * (1 - Math.cos(2 * Math.PI * i / count)));
    }
    transform.realForward(work);
    double[] powers = new double[SIZE / 2 + 1];
    powers[0] = work[0] * work[0];
    powers[SIZE / 2] = work[1] * work[1];
    double loudest = 0;
    for (int i = 1; i < SIZE / 2; i++) {
      powers[i] = work[2 * i] * work[2 * i] + work[2 * i + 1] * work[2 * i + 1];
      loudest = Math.max(loudest, powers[i]);
    }
    if (loudest > 1e-4) {
      for (int i = 0; i < powers.length; i++) {
        logs[i] += 0.5 * Math.log(powers[i] + 1e-10 * loudest);
      }
      looks++;
    }
  }

  /** What undoes the echoes of all that was taken; empty where there are none. */
  public Optional<EchoFilter> found() {
    if (looks == 0 && filled > LOOK / 8) {
      look(filled);
    }
    if (looks == 0) {
      return Optional.empty();
    }
    double[] cepstrum = cepstrum();
    int delay = strongest(cepstrum);
    if (strength(cepstrum, delay) < LEAST) {
      return Optional.empty();
    }
    return Optional.of(new EchoFilter(inverse(peaks(cepstrum, delay))));
  }

  private double[] cepstrum() {
    float[] work = new float[SIZE];
    work[0] = (float) (logs[0] / looks);
    work[1] = (float) (logs[SIZE / 2] / looks);
    for (int i = 1; i < SIZE / 2; i++) {
      work[2 * i] = (float) (logs[i] / looks);
    }
    transform.realInverse(work, true);
    double[] cepstrum = new double[LOOK];
    for (int i = 0; i < LOOK; i++) {
      cepstrum[i] = 2 * work[i]; // the causal half holds it all
    }
    return cepstrum;
  }

  private static int strongest(double[] cepstrum) {
    int best = SHORTEST;
    for (int lag = SHORTEST; lag < LONGEST; lag++) {
      best = strength(cepstrum, lag) > strength(cepstrum, best) ? lag : best;
    }
    return best;
  }

  private static double strength(double[] cepstrum, int lag) {
    return cepstrum[lag - 1] + cepstrum[lag] + cepstrum[lag + 1];
  }

  /** The cepstrum near the multiples of the delay, nothing elsewhere. */
  private static double[] peaks(double[] cepstrum, int delay) {
    double noise = noise(cepstrum);
    double[] kept = new double[cepstrum.length];
    for (int k = 1; k <= MOST_REPEATS && k * delay + SPREAD < cepstrum.length; k++) {
      for (int lag = k * delay - SPREAD; lag <= k * delay + SPREAD; lag++) {
        kept[lag] = Math.abs(cepstrum[lag]) > 3 * noise ? cepstrum[lag] : 0;
      }
    }
    return kept;
  }

  private static double noise(double[] cepstrum) {
    double[] sizes = new double[LONGEST - SHORTEST];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(cepstrum[SHORTEST + i]);
    }
    return 1.5 * RecentSlices.median(sizes);
  }

  /** The impulse response whose cepstrum is the negated one: by the recursion n·h = Σ k·c·h. */
  private static float[] inverse(double[] cepstrum) {
    int[] lags = new int[cepstrum.length];
    int count = 0;
    for (int lag = 0; lag < cepstrum.length; lag++) {
      if (cepstrum[lag] != 0) {
        lags[count++] = lag;
      }
    }
    lags = Arrays.copyOf(lags, count);
    float[] response = new float[cepstrum.length];
    response[0] = 1;
    for (int n = 1; n < response.length; n++) {
      double sum = 0;
      for (int lag : lags) {
        if (lag <= n && response[n - lag] != 0) {
          sum -= lag * cepstrum[lag] * response[n - lag];
        }
      }
      response[n] = Math.abs(sum / n) < LEAST_TAP ? 0 : (float) (sum / n);
    }
    return response;
  }
}

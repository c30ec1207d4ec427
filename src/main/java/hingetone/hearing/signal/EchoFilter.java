package hingetone.hearing.signal;

/** Takes echoes out of a sound, block by block: an impulse response of few taps far apart. */
public final class EchoFilter {
  private final int[] lags;
  private final float[] taps;
  private final float[] past;
  private long end;

  EchoFilter(float[] response) {
    int count = 0;
    int longest = 1;
    for (int i = 0; i < response.length; i++) {
      if (response[i] != 0) {
        count++;
        longest = i + 1;
      }
    }
    lags = new int[count];
    taps = new float[count];
    for (int i = 0, n = 0; i < response.length; i++) {
      if (response[i] != 0) {
        lags[n] = i;
        taps[n++] = response[i];
      }
    }
    past = new float[Integer.highestOneBit(longest) * 2];
  }

  /** Seconds to the strongest echo. */
  public double delay() {
    int best = 1;
    for (int i = 2; i < lags.length; i++) {
      best = Math.abs(taps[i]) > Math.abs(taps[best]) ? i : best;
    }
    return (double) lags[best] / Sampling.RATE;
  }

  /** The next samples without their echoes. */
  public float[] next(float[] samples) {
    float[] clean = new float[samples.length];
    int mask = past.length - 1;
    for (int i = 0; i < samples.length; i++) {
      past[(int) (end & mask)] = samples[i];
      float sum = 0;
      for (int tap = 0; tap < taps.length; tap++) {
        sum += taps[tap] * past[(int) (end - lags[tap]) & mask];
      }
      clean[i] = sum;
      end++;
    }
    return clean;
  }
}

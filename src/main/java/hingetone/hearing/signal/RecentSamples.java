package hingetone.hearing.signal;

/** The last stretch of a sound, by the number of each sample from its start. */
public final class RecentSamples {
  private final float[] ring;
  private long end;

  /**
   * @param samples how many it keeps at least, a power of two
   */
  public RecentSamples(int samples) {
    if (Integer.bitCount(samples) != 1) {
      throw new IllegalArgumentException("not a power of two: " + samples);
    }
    ring = new float[samples];
  }

  public void add(float[] samples, int count) {
    for (int i = 0; i < count; i++) {
      ring[(int) (end++ & ring.length - 1)] = samples[i];
    }
  }

  /** How many samples there have been. */
  public long end() {
    return end;
  }

  /** Samples from a place on; silence before the start, after the end and where it is forgotten. */
  public void copy(long from, float[] into) {
    long oldest = end - ring.length;
    for (int i = 0; i < into.length; i++) {
      long place = from + i;
      boolean kept = place >= 0 && place >= oldest && place < end;
      into[i] = kept ? ring[(int) (place & ring.length - 1)] : 0;
    }
  }
}

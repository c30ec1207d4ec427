package hingetone.sound;

/**
 * The master volume: it never steps, it fades.
 *
 * <p>A change is spread over {@value #FADE_MILLIS} ms, and a new volume starts from silence, so
 * that playing begins with a fade-in. Any thread may set it; one thread applies it.
 */
public final class Volume {
  private static final int FADE_MILLIS = 50;

  private final float mostChangeEachFrame;
  private volatile float target;
  private float current;

  /**
   * A volume for a sample rate.
   *
   * @param percent 0 (silent) to 100 (unchanged)
   */
  public Volume(int sampleRate, int percent) {
    mostChangeEachFrame = 1000f / (FADE_MILLIS * (float) sampleRate);
    set(percent);
  }

  /** Fades to a volume, 0 to 100. */
  public void set(int percent) {
    target = gain(percent);
  }

  /**
   * The factor of a volume in percent: the square of the fraction, so that 50 is 12 dB below 100
   * (the curve that General MIDI level 2 recommends for channel volume).
   */
  public static float gain(int percent) {
    float fraction = Math.max(0, Math.min(100, percent)) / 100f;
    return fraction * fraction;
  }

  /** Applies the volume to interleaved stereo, in place. */
  public void apply(float[] stereo, int frames) {
    float goal = target;
    for (int i = 0; i < frames; i++) {
      float missing = goal - current;
      current += Math.max(-mostChangeEachFrame, Math.min(mostChangeEachFrame, missing));
      stereo[2 * i] *= current;
      stereo[2 * i + 1] *= current;
    }
  }
}

package hingetone.sound;

/**
 * Keeps the peaks of a stereo stream below a ceiling, also between the samples, and leaves what is
 * below it untouched.
 *
 * <p>It looks ahead: the gain goes down along a straight line before a peak arrives and comes back
 * slowly after it, so nothing is cut off and nothing clicks. What comes out is {@link
 * #delayFrames()} frames late.
 */
public final class Limiter {
  private static final double LOOK_AHEAD_SECONDS = 0.003;
  private static final double RELEASE_SECONDS = 0.15;

  private final float ceiling;
  private final int lookAhead;
  private final float release;
  private final TruePeak left = new TruePeak();
  private final TruePeak right = new TruePeak();

  private final float[] delayed;
  private final SlidingMinimum floor;
  private final float[] recent;
  private double recentSum;
  private float gain = 1;
  private long frame;

  /**
   * A limiter for a sample rate.
   *
   * @param ceilingDb where peaks end, in dB to full scale: −1 lets nothing over −1 dBTP
   */
  public Limiter(int sampleRate, double ceilingDb) {
    ceiling = (float) Math.pow(10, ceilingDb / 20);
    lookAhead = (int) Math.ceil(LOOK_AHEAD_SECONDS * sampleRate);
    release = (float) (1 - Math.exp(-1 / (RELEASE_SECONDS * sampleRate)));
    delayed = new float[2 * delayFrames()];
    // A peak between two samples belongs to both: the window reaches one frame further.
    floor = new SlidingMinimum(lookAhead + 2);
    recent = new float[lookAhead];
    java.util.Arrays.fill(recent, 1);
    recentSum = lookAhead;
  }

  /** How many frames later everything comes out. */
  public int delayFrames() {
    return lookAhead + TruePeak.DELAY;
  }

  /** Limits interleaved stereo in place. */
  public void apply(float[] stereo, int frames) {
    for (int i = 0; i < frames; i++) {
      float peak = Math.max(left.next(stereo[2 * i]), right.next(stereo[2 * i + 1]));
      float smooth = nextGain(peak);
      int place = (int) (frame % delayFrames());
      float outLeft = delayed[2 * place] * smooth;
      float outRight = delayed[2 * place + 1] * smooth;
      delayed[2 * place] = stereo[2 * i];
      delayed[2 * place + 1] = stereo[2 * i + 1];
      stereo[2 * i] = outLeft;
      stereo[2 * i + 1] = outRight;
      frame++;
    }
  }

  /**
   * The gain for the frame that comes out now: the lowest that the frames ahead need, released
   * slowly, then averaged over the look-ahead, which makes the way down a straight line that ends
   * when the peak comes out.
   */
  private float nextGain(float peak) {
    float needed = peak > ceiling ? ceiling / peak : 1;
    float lowest = floor.next(needed);
    gain = Math.min(lowest, gain + release * (1 - gain));
    int place = (int) (frame % lookAhead);
    recentSum += gain - recent[place];
    recent[place] = gain;
    return (float) Math.min(1, recentSum / lookAhead);
  }
}

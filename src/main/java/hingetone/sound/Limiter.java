package hingetone.sound;

import hingetone.sound.level.TruePeak;
import java.util.Arrays;

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
  private final TruePeak truePeak = new TruePeak();
  private final SlidingMinimum floor;
  private final float[] delayed;
  private final float[] recent;
  private float[] peaks = new float[0];
  private double recentSum;
  private float gain = 1;
  private int inDelayed;
  private int inRecent;

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
    Arrays.fill(recent, 1);
    recentSum = lookAhead;
  }

  /** How many frames later everything comes out. */
  public int delayFrames() {
    return lookAhead + TruePeak.DELAY;
  }

  /** Limits interleaved stereo in place. */
  public void apply(float[] stereo, int frames) {
    if (peaks.length < frames) {
      peaks = new float[frames];
    }
    truePeak.next(stereo, frames, ceiling, peaks);
    for (int i = 0; i < frames; i++) {
      float smooth = nextGain(peaks[i]);
      float outLeft = delayed[inDelayed] * smooth;
      float outRight = delayed[inDelayed + 1] * smooth;
      delayed[inDelayed] = stereo[2 * i];
      delayed[inDelayed + 1] = stereo[2 * i + 1];
      inDelayed = inDelayed + 2 < delayed.length ? inDelayed + 2 : 0;
      stereo[2 * i] = outLeft;
      stereo[2 * i + 1] = outRight;
    }
  }

  /**
   * The gain for the frame that comes out now: the lowest that the frames ahead need, released
   * slowly, then averaged over the look-ahead, which makes the way down a straight line that ends
   * when the peak comes out.
   */
  private float nextGain(float peak) {
    float lowest = floor.next(peak > ceiling ? ceiling / peak : 1);
    gain = Math.min(lowest, gain + release * (1 - gain));
    recentSum += gain - recent[inRecent];
    recent[inRecent] = gain;
    inRecent = inRecent + 1 < lookAhead ? inRecent + 1 : 0;
    return (float) Math.min(1, recentSum / lookAhead);
  }
}

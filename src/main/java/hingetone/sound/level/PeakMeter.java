package hingetone.sound.level;

/** Measures the highest true peak of a stereo stream ({@link TruePeak}). */
public final class PeakMeter {
  private final TruePeak truePeak = new TruePeak();
  private float[] peaks = new float[0];
  private float peak;

  /** Takes interleaved stereo. */
  public void add(float[] stereo, int frames) {
    if (peaks.length < frames) {
      peaks = new float[frames];
    }
    truePeak.next(stereo, frames, peak, peaks);
    for (int i = 0; i < frames; i++) {
      peak = Math.max(peak, peaks[i]);
    }
  }

  /** The true peak so far in dBTP, full scale being 0; negative infinity in silence. */
  public double truePeak() {
    return 20 * Math.log10(peak);
  }
}

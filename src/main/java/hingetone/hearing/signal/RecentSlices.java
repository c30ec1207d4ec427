package hingetone.hearing.signal;

import java.util.ArrayList;
import java.util.Arrays;

/** The frames of late, by their number from the start of the sound. */
public final class RecentSlices {
  private final ArrayList<Slice> frames = new ArrayList<>();
  private long first;

  public void add(Slice frame) {
    frames.add(frame);
  }

  public long end() {
    return first + frames.size();
  }

  public long first() {
    return first;
  }

  /** The frame with a number; the nearest kept where there is none. */
  public Slice get(long number) {
    long kept = Math.max(first, Math.min(number, end() - 1));
    return frames.get((int) (kept - first));
  }

  /** Forgets what lies before a frame. */
  public void forgetBefore(long number) {
    int count = (int) Math.max(0, Math.min(number - first, frames.size() - 1));
    if (count > 64) {
      frames.subList(0, count).clear();
      first += count;
    }
  }

  /** The median pitch of the clear frames of a stretch; not a number where there are none. */
  public double pitch(long from, long to) {
    double[] found = new double[(int) Math.max(0, to - from)];
    int count = 0;
    for (long i = Math.max(from, first); i < Math.min(to, end()); i++) {
      Slice frame = get(i);
      if (frame.clear()) {
        found[count++] = frame.midi();
      }
    }
    return count == 0 ? Double.NaN : median(Arrays.copyOf(found, count));
  }

  public static double median(double[] values) {
    Arrays.sort(values);
    return values.length == 0 ? Double.NaN : values[values.length / 2];
  }
}

package hingetone.play;

import hingetone.hearing.live.DelayFinder;
import hingetone.hearing.live.DelayFinder.Delay;
import hingetone.sound.InputLine;
import hingetone.sound.OutputLine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * Measures the delay out and back: clicks go out and come in again, through a cable or the air, and
 * what lies between when each is said to be heard and when it comes in is what {@code --delay}
 * takes off. It holds for these two devices, their buffers, and this opening of them.
 */
public final class DelayMeasure {
  private static final int CLICKS = 9;
  private static final double LEVEL = 0.25;
  private static final double APART_SECONDS = 0.5;

  /** A device may say that a click is heard a little later than it comes back in. */
  private static final long EARLIEST_NANOS = TimeUnit.MILLISECONDS.toNanos(60);

  /** The first click finds both devices still settling. */
  private static final int LEFT_OUT = 1;

  private DelayMeasure() {}

  /** The delay; empty where fewer than half of the clicks came in. */
  public static Optional<Delay> of(OutputLine out, InputLine in) {
    TreeMap<Long, float[]> heard = new TreeMap<>();
    Thread ears = new Thread(() -> listen(in, heard), "sound input");
    ears.setDaemon(true);
    ears.start();
    List<Long> clicks = play(out);
    in.close();
    try {
      ears.join(1000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    List<Double> delays = new ArrayList<>();
    synchronized (heard) {
      for (long click : clicks.subList(LEFT_OUT, clicks.size())) {
        came(heard, click, in.sampleRate()).ifPresent(delays::add);
      }
    }
    return delays.size() < (CLICKS - LEFT_OUT + 1) / 2
        ? Optional.empty()
        : Optional.of(Delay.of(delays));
  }

  /** Blocks by the moment their first sample came in. */
  private static void listen(InputLine in, TreeMap<Long, float[]> heard) {
    long read = 0;
    for (Optional<float[]> block = in.read(); block.isPresent(); block = in.read()) {
      synchronized (heard) {
        heard.put(in.nanos(read), block.get());
      }
      read += InputLine.BLOCK;
    }
  }

  /** Plays the clicks; the moments at which they are said to be heard. */
  private static List<Long> play(OutputLine out) {
    int rate = out.sampleRate();
    float[] click = DelayFinder.click(rate);
    int apart = (int) (APART_SECONDS * rate);
    List<Long> moments = new ArrayList<>();
    float[] stereo = new float[2 * apart];
    for (int i = 0; i < CLICKS + 1; i++) {
      long frame = out.framesWritten();
      for (int k = 0; k < click.length && i < CLICKS; k++) {
        stereo[2 * k] = (float) (LEVEL * click[k]);
        stereo[2 * k + 1] = stereo[2 * k];
      }
      if (i == CLICKS) {
        Arrays.fill(stereo, 0);
      }
      if (!out.write(stereo, apart)) {
        break;
      }
      long now = System.nanoTime();
      if (i < CLICKS) {
        moments.add(now + Math.round((frame - out.frameHeard(now)) * 1e9 / rate));
      }
    }
    return moments;
  }

  /** How much later than a moment the click came in, in milliseconds. */
  private static Optional<Double> came(TreeMap<Long, float[]> heard, long moment, int rate) {
    Long first = heard.floorKey(moment - EARLIEST_NANOS);
    if (first == null) {
      return Optional.empty();
    }
    float[] stretch = new float[(int) (0.9 * APART_SECONDS * rate)];
    int length = 0;
    for (float[] block : heard.tailMap(first).values()) {
      int some = Math.min(block.length, stretch.length - length);
      System.arraycopy(block, 0, stretch, length, some);
      length += some;
    }
    return DelayFinder.find(stretch, DelayFinder.click(rate))
        .map(at -> (first - moment) / 1e6 + 1000.0 * at / rate);
  }
}

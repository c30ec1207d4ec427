package hingetone.hearing;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slice;
import hingetone.hearing.signal.Slices;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/** Hears notes in a sound that comes in blocks; the same whatever the blocks. */
public final class Ear {
  /** The longest note and what is looked at before it: 47 s. */
  private static final int KEPT_SAMPLES = 1 << 20;

  /** More than this is taken piece by piece, for the tape forgets. */
  private static final int BLOCK = 1 << 14;

  private final RecentSamples tape = new RecentSamples(KEPT_SAMPLES);
  private final Slices frames = new Slices(tape);
  private final NoteFinder notes = new NoteFinder(tape);

  /**
   * Takes more sound; gives the notes that have become sure.
   *
   * @param samples at {@link Sampling#RATE}, ±1
   */
  public List<HeardNote> hear(float[] samples) {
    return hear(samples, frame -> {});
  }

  /** The same; each frame measured is shown to a watcher too. */
  List<HeardNote> hear(float[] samples, Consumer<Slice> watcher) {
    List<HeardNote> found = new ArrayList<>();
    for (int from = 0; from < samples.length; from += BLOCK) {
      float[] block = Arrays.copyOfRange(samples, from, Math.min(samples.length, from + BLOCK));
      tape.add(block, block.length);
      List<Slice> ready = frames.ready();
      ready.forEach(watcher);
      found.addAll(notes.take(ready));
    }
    return found;
  }

  /** The notes that are left when the sound has ended. */
  public List<HeardNote> rest() {
    return rest(frame -> {});
  }

  List<HeardNote> rest(Consumer<Slice> watcher) {
    List<Slice> last = frames.rest();
    last.forEach(watcher);
    List<HeardNote> found = new ArrayList<>(notes.take(last));
    found.addAll(notes.rest());
    return found;
  }
}

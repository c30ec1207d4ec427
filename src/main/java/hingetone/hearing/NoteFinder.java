package hingetone.hearing;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Slices in, notes out: each note when the next begins or it has died away. */
final class NoteFinder {
  /** A note is closed after this many frames at the latest: 30 s. */
  private static final int LONGEST = Sampling.frames(30);

  /** What is kept before an open onset. */
  private static final int KEPT = 220;

  private final RecentSlices history = new RecentSlices();
  private final Onsets onsets = new Onsets(history);
  private final NoteMaker maker;
  private Optional<Onset> open = Optional.empty();

  NoteFinder(RecentSamples tape) {
    maker = new NoteMaker(tape, history);
  }

  /** The notes that have become sure. */
  List<HeardNote> take(List<Slice> frames) {
    frames.forEach(history::add);
    return found(false);
  }

  /** The notes that are left when the sound has ended. */
  List<HeardNote> rest() {
    return found(true);
  }

  private List<HeardNote> found(boolean ended) {
    List<HeardNote> notes = new ArrayList<>();
    if (history.end() == 0) {
      return notes;
    }
    for (Onset onset : onsets.ready(ended)) {
      close(onset.frame(), notes);
      open = Optional.of(onset);
    }
    if (ended || open.isPresent() && onsets.decided() - open.get().frame() > LONGEST) {
      close(ended ? history.end() : onsets.decided(), notes);
    }
    history.forgetBefore(open.map(Onset::frame).orElse(onsets.decided()) - KEPT);
    return notes;
  }

  private void close(long end, List<HeardNote> notes) {
    open.ifPresent(onset -> notes.addAll(maker.notes(onset, end)));
    open = Optional.empty();
  }
}

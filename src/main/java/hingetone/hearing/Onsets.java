package hingetone.hearing;

import hingetone.hearing.signal.RecentSlices;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds where notes begin, frame after frame, some frames late. */
final class Onsets {
  private static final TrainedJudge JUDGE = TrainedJudge.named("onsets.txt");

  /** Two onsets lie at least this many frames apart: 41 ms. */
  private static final int APART = 7;

  private static final double LEAST_CERTAINTY = 0.5;

  private final RecentSlices history;
  private Optional<Onset> waiting = Optional.empty();
  private long next = 2;

  Onsets(RecentSlices history) {
    this.history = history;
  }

  /** The onsets that have become sure; none can come any more before {@link #decided}. */
  List<Onset> ready(boolean ended) {
    List<Onset> found = new ArrayList<>();
    long end = ended ? history.end() : history.end() - OnsetEvidence.REACH - 4;
    for (; next < end; next++) {
      if (waiting.isPresent() && next - waiting.get().frame() > APART) {
        found.add(waiting.get());
        waiting = Optional.empty();
      }
      if (OnsetEvidence.candidate(history, next)) {
        judge(next).ifPresent(this::consider);
      }
    }
    if (ended) {
      waiting.ifPresent(found::add);
      waiting = Optional.empty();
    }
    return found;
  }

  /** The frame up to which onsets are known. */
  long decided() {
    return waiting.map(Onset::frame).orElse(next);
  }

  private void consider(Onset onset) {
    if (waiting.isEmpty() || onset.certainty() > waiting.get().certainty()) {
      waiting = Optional.of(onset);
    }
  }

  private Optional<Onset> judge(long frame) {
    double[] classes = JUDGE.judge(new OnsetEvidence(history, frame).measures());
    double certainty = 1 - classes[0];
    if (certainty < LEAST_CERTAINTY) {
      return Optional.empty();
    }
    Onset.Kind best = Onset.Kind.PICKED;
    for (Onset.Kind kind : Onset.Kind.values()) {
      best = classes[kind.ordinal() + 1] > classes[best.ordinal() + 1] ? kind : best;
    }
    return Optional.of(new Onset(frame, best, certainty));
  }
}

package hingetone.hearing;

import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Slice;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pitch of one note from frame to frame, freed of what is another note's.
 *
 * @param frames the frames' numbers, rising
 * @param midi the pitch at each
 */
record PitchCurve(List<Long> frames, List<Double> midi) {
  /** What lies further from the note's middle pitch belongs to something else, in semitones. */
  private static final double WIDEST = 5.5;

  private static final double LOUD_DB = 12;

  PitchCurve {
    frames = List.copyOf(frames);
    midi = List.copyOf(midi);
  }

  /** The curve of the frames of a stretch; its loud frames say where it lies. */
  static PitchCurve of(RecentSlices history, long from, long to) {
    double middle = middle(history, from, to);
    List<Long> frames = new ArrayList<>();
    List<Double> midi = new ArrayList<>();
    for (long i = Math.max(from, history.first()); i < Math.min(to, history.end()); i++) {
      double pitch = history.get(i).midi();
      if (!Double.isNaN(pitch) && Math.abs(pitch - middle) <= WIDEST) {
        frames.add(i);
        midi.add(pitch);
      }
    }
    return new PitchCurve(frames, midi);
  }

  private static double middle(RecentSlices history, long from, long to) {
    double loudest = -200;
    for (long i = from; i < to; i++) {
      loudest = Math.max(loudest, history.get(i).level());
    }
    double[] found = new double[(int) Math.max(0, to - from)];
    int count = 0;
    for (long i = from; i < to; i++) {
      Slice slice = history.get(i);
      if (slice.voiced() && slice.level() > loudest - LOUD_DB) {
        found[count++] = slice.midi();
      }
    }
    return RecentSlices.median(Arrays.copyOf(found, count));
  }

  int size() {
    return midi.size();
  }

  /** The median pitch of a share of the curve: {@code median(0, 0.5)} is that of its first half. */
  double median(double from, double to) {
    int first = (int) Math.floor(from * size());
    int last = Math.max(first + 1, (int) Math.ceil(to * size()));
    return quantile(first, Math.min(last, size()), 0.5);
  }

  /** A quantile of the pitches from one place to another. */
  double quantile(int from, int to, double share) {
    double[] sorted = new double[to - from];
    for (int i = from; i < to; i++) {
      sorted[i - from] = midi.get(i);
    }
    Arrays.sort(sorted);
    return sorted[(int) Math.min(sorted.length - 1L, Math.round(share * (sorted.length - 1)))];
  }

  /** The part between two places. */
  PitchCurve part(int from, int to) {
    return new PitchCurve(frames.subList(from, to), midi.subList(from, to));
  }
}

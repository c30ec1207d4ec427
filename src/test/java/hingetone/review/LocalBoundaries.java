package hingetone.review;

import hingetone.take.PlacedNote;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The local boundary detection model (Cambouropoulos, ICMC 2001) as a yardstick for our own cuts,
 * with the edges of MIDI Toolbox 1.1: how strongly each note begins something new, 0 to 1.
 */
final class LocalBoundaries {
  private static final double PITCH = 0.25;
  private static final double STROKES = 0.5;
  private static final double RESTS = 0.25;

  private LocalBoundaries() {}

  /** The strength before each note; the first begins something. */
  static double[] of(List<PlacedNote> notes) {
    int steps = notes.size() - 1;
    double[] pitch =
        strengths(
            IntStream.range(0, steps)
                .mapToDouble(i -> Math.abs(notes.get(i + 1).reached() - notes.get(i).reached()))
                .toArray());
    double[] strokes =
        strengths(
            IntStream.range(0, steps)
                .mapToDouble(i -> notes.get(i + 1).at() - notes.get(i).at())
                .toArray());
    double[] rests =
        strengths(
            IntStream.range(0, steps)
                .mapToDouble(i -> Math.max(0, notes.get(i + 1).at() - notes.get(i).end()))
                .toArray());
    double[] all = new double[notes.size()];
    all[0] = 1;
    for (int i = 0; i < steps; i++) {
      all[i + 1] = PITCH * pitch[i] + STROKES * strokes[i] + RESTS * rests[i];
    }
    return all;
  }

  /** Each interval times how much it differs from those beside it, the largest being 1. */
  private static double[] strengths(double[] intervals) {
    double[] strengths = new double[intervals.length];
    double most = 0;
    for (int i = 1; i < intervals.length; i++) {
      double after = i + 1 < intervals.length ? change(intervals[i], intervals[i + 1]) : 0;
      strengths[i] = intervals[i] * (change(intervals[i - 1], intervals[i]) + after);
      most = Math.max(most, strengths[i]);
    }
    for (int i = 0; most > 0 && i < strengths.length; i++) {
      strengths[i] /= most;
    }
    return strengths;
  }

  private static double change(double one, double other) {
    return one + other == 0 ? 0 : Math.abs(one - other) / (one + other);
  }
}

package hingetone.hearing;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes a note of what sounds between two onsets. */
final class NoteMaker {
  /** Slices at either edge of a note in which its pitch mixes with its neighbour's: 23 ms. */
  private static final int EDGE = 4;

  private static final int FEWEST_FRAMES = 4;

  /** A curve has a point where the pitch has changed by this, in semitones. */
  private static final double LEAST_CHANGE = 0.02;

  private static final double DIES_AWAY_DB = 36;
  private static final int LONGEST_GAP = Sampling.frames(0.08);

  private final RecentSamples tape;
  private final RecentSlices history;
  private final Pairs pairs;

  NoteMaker(RecentSamples tape, RecentSlices history) {
    this.tape = tape;
    this.history = history;
    this.pairs = new Pairs(tape, history);
  }

  /**
   * The note of an onset, or two where two strings are struck; none where there is no pitch.
   *
   * @param end the frame where the next begins
   */
  List<HeardNote> notes(Onset onset, long end) {
    if (onset.kind() == Onset.Kind.PICKED) {
      Optional<Pairs.Pair> pair = pairs.pair(onset.frame(), end);
      if (pair.isPresent()) {
        return both(onset, end, pair.get());
      }
    }
    return note(onset, end).stream().toList();
  }

  private List<HeardNote> both(Onset onset, long end, Pairs.Pair pair) {
    long last = lastSounding(onset.frame(), end);
    List<HeardNote> notes = new ArrayList<>();
    for (double midi : new double[] {pair.low(), pair.high()}) {
      notes.add(
          new HeardNote(
              seconds(onset.frame()),
              seconds(last + 1),
              loudest(onset.frame(), last + 1),
              midi,
              midi,
              Technique.PLAIN,
              false,
              List.of(),
              onset.certainty() * pair.certainty()));
    }
    return notes;
  }

  /** The last frame that is loud enough, whether it has a pitch or not. */
  private long lastSounding(long from, long end) {
    double loudest = loudest(from, Math.min(end, from + 60));
    long last = from;
    for (long i = from; i < end && i - last <= LONGEST_GAP; i++) {
      last = history.get(i).level() > loudest - DIES_AWAY_DB / 2 ? i : last;
    }
    return last;
  }

  /** What speaks for how the note of an onset is played; empty where there is no pitch. */
  Optional<TechniqueEvidence> evidence(Onset onset, long end) {
    PitchCurve curve = PitchCurve.of(history, onset.frame() + 3, lastFrame(onset.frame(), end) + 1);
    return curve.size() < FEWEST_FRAMES
        ? Optional.empty()
        : Optional.of(evidence(onset, curve, end));
  }

  private TechniqueEvidence evidence(Onset onset, PitchCurve curve, long end) {
    boolean cut = curve.frames().get(curve.size() - 1) >= end - EDGE;
    return new TechniqueEvidence(tape, history, onset.frame(), inner(curve, cut));
  }

  private Optional<HeardNote> note(Onset onset, long end) {
    long last = lastFrame(onset.frame(), end);
    PitchCurve curve = PitchCurve.of(history, onset.frame() + 3, last + 1);
    if (curve.size() < FEWEST_FRAMES) {
      return Optional.empty();
    }
    last = curve.frames().get(curve.size() - 1);
    PitchMovement shape = PitchMovement.of(evidence(onset, curve, end), onset.kind());
    return Optional.of(
        new HeardNote(
            seconds(onset.frame()),
            seconds(last + 1),
            loudest(onset.frame(), last + 1),
            shape.struck(),
            shape.reached(),
            shape.technique(),
            shape.vibrato(),
            points(curve),
            onset.certainty() * clarity(curve)));
  }

  private static PitchCurve inner(PitchCurve curve, boolean cut) {
    int from = Math.min(2, curve.size() / 4);
    int to = curve.size() - (cut ? Math.min(EDGE, curve.size() / 4) : 0);
    return curve.part(from, to);
  }

  /** The last frame in which the note still sounds. */
  private long lastFrame(long from, long end) {
    double loudest = loudest(from, Math.min(end, from + 60));
    long last = from;
    for (long i = from; i < end && i - last <= LONGEST_GAP; i++) {
      Slice frame = history.get(i);
      if (frame.voiced() && frame.level() > loudest - DIES_AWAY_DB) {
        last = i;
      }
    }
    return last;
  }

  private double loudest(long from, long to) {
    double level = -140;
    for (long i = from; i < to; i++) {
      level = Math.max(level, history.get(i).level());
    }
    return level;
  }

  private double clarity(PitchCurve curve) {
    double sum = 0;
    for (long frame : curve.frames()) {
      sum += Math.min(1, history.get(frame).dip());
    }
    return 1 - sum / curve.size();
  }

  /** Where the pitch changes, so that a held note takes little room. */
  private static List<HeardNote.Point> points(PitchCurve curve) {
    List<HeardNote.Point> points = new ArrayList<>();
    double last = Double.MAX_VALUE;
    for (int i = 0; i < curve.size(); i++) {
      double midi = curve.midi().get(i);
      if (Math.abs(midi - last) >= LEAST_CHANGE) {
        points.add(new HeardNote.Point(seconds(curve.frames().get(i)), midi));
        last = midi;
      }
    }
    return points;
  }

  static double seconds(long frame) {
    return frame / Sampling.FRAME_RATE;
  }
}

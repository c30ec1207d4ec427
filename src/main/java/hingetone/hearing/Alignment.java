package hingetone.hearing;

import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Where a recording lies in a piece whose tempos and keys are known. */
public final class Alignment {
  /** Fewer notes tell nothing. */
  public static final int FEWEST_NOTES = 8;

  /** Below this the notes keep to no beat of the piece. */
  public static final double LEAST_CLOSENESS = 0.6;

  private static final double FASTEST = 1.04;
  private static final double RATIO_STEP = 0.0025;
  private static final double PHASE_STEP = 0.01;

  /** What a place costs that is not the expected one. */
  private static final double SHIFTED = 0.06;

  /** Within this of it a place is the expected one, in seconds. */
  private static final double EXPECTED = 0.05;

  /** What long notes on beats and not between them tell: both keep to eighths alike. */
  private static final double ON_BEAT = 0.2;

  /** A note this far from the grid, in seconds, counts little. */
  private static final double NEAR = 0.025;

  /** How much better another beat than the expected one must fit the keys. */
  private static final double CLEARLY_BETTER = 0.06;

  /** More of a note's length tells no more, in seconds. */
  private static final double LONG = 1;

  private static final int MOST_BEATS_AWAY = 64;

  private final double offset;
  private final double ratio;
  private final double closeness;
  private final TempoLine tempos;

  private Alignment(double offset, double ratio, double closeness, TempoLine tempos) {
    this.offset = offset;
    this.ratio = ratio;
    this.closeness = closeness;
    this.tempos = tempos;
  }

  /** Seconds from the start of the recording to bar 1. */
  public double offset() {
    return offset;
  }

  /** How much faster than the piece's tempo it is played, 1 for the same. */
  public double ratio() {
    return ratio;
  }

  /**
   * How closely its notes keep to eighths, sixteenths or triplets, 0 to 1; notes at random reach
   * about 0.5.
   */
  public double closeness() {
    return closeness;
  }

  /** The tempos of a piece as numbers: where each begins, in two ways, and how fast it is. */
  private record TempoLine(double[] seconds, double[] quarters, double[] quartersASecond) {
    static TempoLine of(TempoMap map) {
      int count = map.steps().size();
      TempoLine line = new TempoLine(new double[count], new double[count], new double[count]);
      for (int i = 0; i < count; i++) {
        TempoMap.Step step = map.steps().get(i);
        line.seconds[i] = map.micros(step.at()) / 1e6;
        line.quarters[i] = step.at().toDouble();
        line.quartersASecond[i] = step.quartersPerMinute().toDouble() / 60;
      }
      return line;
    }

    double quarters(double at) {
      int i = seconds.length - 1;
      while (i > 0 && seconds[i] > at) {
        i--;
      }
      return quarters[i] + (at - seconds[i]) * quartersASecond[i];
    }
  }

  /** A recording whose bar 1 is where the player says. */
  public static Alignment at(double offset, TempoMap tempos, List<HeardNote> notes) {
    TempoLine line = TempoLine.of(tempos);
    double closeness = new Alignment(offset, 1, 0, line).grid(notes);
    return new Alignment(offset, 1, closeness, line);
  }

  /**
   * The likeliest place: the tempo and the phase at which the notes keep best to the beat, then the
   * beat at which they fit the keys best, the expected one unless another is clearly better.
   *
   * @param pulse the length of a beat in quarter notes
   * @param expected seconds to bar 1 where nothing else tells: the piece's count-in
   * @param keyAt the key that holds at a place in quarter notes from bar 1
   * @return empty for too few notes
   */
  public static Optional<Alignment> find(
      List<HeardNote> notes,
      TempoMap tempos,
      Beats pulse,
      double expected,
      Function<Beats, Key> keyAt) {
    if (notes.size() < FEWEST_NOTES) {
      return Optional.empty();
    }
    TempoLine line = TempoLine.of(tempos);
    double beat = pulse.toDouble() / line.quartersASecond[0];
    int phases = (int) (beat / 2 / PHASE_STEP);
    int ratios = (int) ((FASTEST - 1) / RATIO_STEP);
    Alignment best = new Alignment(expected, 1, 0, line);
    double likeliest = 0;
    for (int r = -ratios; r <= ratios; r++) {
      for (int p = -phases; p <= phases; p++) {
        double ratio = 1 + r * RATIO_STEP;
        Alignment here = new Alignment(expected + p * PHASE_STEP, ratio, 0, line);
        double closeness = here.grid(notes);
        double shifted = Math.abs(p * PHASE_STEP) > EXPECTED ? SHIFTED : 0;
        double likely =
            closeness
                + ON_BEAT * here.onBeats(notes, pulse.toDouble())
                - Math.abs(ratio - 1)
                - shifted;
        if (likely > likeliest) {
          likeliest = likely;
          best = new Alignment(here.offset, ratio, closeness, line);
        }
      }
    }
    return Optional.of(best.onTheBest(notes, beat / best.ratio, keyAt));
  }

  private Alignment onTheBest(List<HeardNote> notes, double beat, Function<Beats, Key> keyAt) {
    double best = fit(notes, keyAt) + CLEARLY_BETTER;
    Alignment found = this;
    for (int i = 2; i <= 2 * MOST_BEATS_AWAY + 1; i++) {
      int away = i % 2 == 0 ? i / 2 : -(i / 2); // of equal ones the nearest, the later first
      Alignment there = new Alignment(offset + away * beat, ratio, closeness, tempos);
      double fit = there.fit(notes, keyAt);
      if (fit > best + 1e-9) {
        best = fit;
        found = there;
      }
    }
    return found;
  }

  /**
   * The place of a moment of the recording as it would be written, in quarter notes from bar 1: the
   * nearest sixteenth, or triplet where that is clearly nearer.
   */
  public Beats place(double seconds) {
    double quarters = quarters(seconds);
    Beats straight = Beats.of(Math.round(quarters * 4), 4);
    Beats triplet = Beats.of(Math.round(quarters * 3), 3);
    double gain =
        Math.abs(straight.toDouble() - quarters) - Math.abs(triplet.toDouble() - quarters);
    return gain > BeatGrid.CLEARLY_NEARER ? triplet : straight;
  }

  /**
   * The places of moments that follow one another, each after the one before, as they would be
   * written: beat by beat on the coarsest grid that they keep to and that keeps them apart.
   *
   * @param seconds rising
   */
  public List<Beats> places(List<Double> seconds) {
    return BeatGrid.places(seconds.stream().map(this::quarters).toList());
  }

  /** The place of a moment of the recording as it was played, in quarter notes from bar 1. */
  public double quarters(double seconds) {
    return tempos.quarters((seconds - offset) * ratio);
  }

  /** How closely the notes keep to sixteenths, or a little less welcome to triplets. */
  private double grid(List<HeardNote> notes) {
    double sum = 0;
    double quarter = 1 / tempos.quartersASecond[0];
    for (HeardNote note : notes) {
      double quarters = quarters(note.at());
      double straight = Math.abs(quarters * 4 - Math.rint(quarters * 4)) / 4 * quarter;
      double triplet = Math.abs(quarters * 3 - Math.rint(quarters * 3)) / 3 * quarter;
      double eighth = Math.abs(quarters * 2 - Math.rint(quarters * 2)) / 2 * quarter;
      sum += Math.max(near(eighth), 0.9 * Math.max(near(straight), near(triplet)));
    }
    return notes.isEmpty() ? 0 : sum / notes.size();
  }

  /** The share of the notes' time whose note begins on a beat. */
  private double onBeats(List<HeardNote> notes, double pulse) {
    double on = 0;
    double all = 0;
    double beat = pulse / tempos.quartersASecond[0];
    for (HeardNote note : notes) {
      double beats = quarters(note.at()) / pulse;
      double length = Math.min(LONG, note.end() - note.at());
      on += length * near(Math.abs(beats - Math.rint(beats)) * beat);
      all += length;
    }
    return all == 0 ? 0 : on / all;
  }

  private static double near(double seconds) {
    return Math.exp(-(seconds / NEAR) * (seconds / NEAR));
  }

  /** The share of the notes' time that is in the key of its place. */
  private double fit(List<HeardNote> notes, Function<Beats, Key> keyAt) {
    double in = 0;
    double all = 0;
    Map<Key, Set<Integer>> scales = new HashMap<>();
    for (HeardNote note : notes) {
      Key key = keyAt.apply(place(note.at()));
      Set<Integer> scale = scales.computeIfAbsent(key, Alignment::chromas);
      double length = Math.min(LONG, note.end() - note.at());
      boolean inside = scale.contains(Math.floorMod(Math.round(note.reached()), 12));
      in += inside ? length : 0;
      all += length;
    }
    return all == 0 ? 0 : in / all;
  }

  private static Set<Integer> chromas(Key key) {
    return key.heptatonic().notes().stream().map(NoteName::chroma).collect(Collectors.toSet());
  }
}

package hingetone.hearing;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slice;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What speaks for how a note is played: how it begins, and how its pitch moves from there. */
final class TechniqueEvidence {
  /** Moments of a note at which its pitch is compared with where it goes, in frames. */
  private static final int[] MOMENTS = {6, 10, 15, 20, 28, 36, 50};

  private static final double[] SHARES = {0.1, 0.25, 0.5, 0.75};

  /** Moves smaller than this have no middle, in semitones. */
  private static final double LEAST_MOVE = 0.2;

  private static final double WIDEST = 4;

  /** Frames about the beginning of a note. */
  private static final int[] AROUND = {-8, -5, -2, 1, 4, 7};

  /** Samples in a block: 1.5 ms. */
  private static final int BLOCK = 32;

  private static final int BLOCKS_BEFORE = 24;
  private static final int BLOCKS_AFTER = 36;

  private final RecentSamples tape;
  private final RecentSlices history;
  private final long at;
  private final PitchCurve curve;

  /**
   * @param at the frame where the note begins
   * @param curve its pitch, without its edges
   */
  TechniqueEvidence(RecentSamples tape, RecentSlices history, long at, PitchCurve curve) {
    this.tape = tape;
    this.history = history;
    this.at = at;
    this.curve = curve;
  }

  /** The pitch it begins with. */
  double struck() {
    return curve.median(0, Math.min(1, Math.max(0.12, 6.0 / curve.size())));
  }

  /** The pitch it ends with. */
  double reached() {
    return curve.median(1 - Math.min(1, Math.max(0.3, 8.0 / curve.size())), 1);
  }

  /** The highest that it stays at. */
  double top() {
    return curve.quantile(0, curve.size(), 0.9);
  }

  boolean vibrato() {
    return Vibrato.in(curve);
  }

  /** The pitch before it; not a number where there is none. */
  double before() {
    return history.pitch(at - 20, at - 6);
  }

  double[] measures() {
    return Stream.of(
            new OnsetEvidence(history, at).measures(),
            movement(),
            neighbours(),
            course(),
            around(),
            attack())
        .flatMapToDouble(DoubleStream::of)
        .toArray();
  }

  /** How far and how fast the pitch moves. */
  private double[] movement() {
    double way = reached() - struck();
    double size = Math.abs(way);
    return new double[] {
      clipped(way),
      clipped(size),
      clipped(top() - Math.max(struck(), reached())),
      clipped(Math.min(struck(), reached()) - curve.quantile(0, curve.size(), 0.1)),
      size - Math.rint(size),
      passing(0.5),
      size < LEAST_MOVE ? 0 : passing(0.8) - passing(0.2),
      Math.log(curve.size()),
      vibrato() ? 1 : 0
    };
  }

  /** When the pitch has gone a share of its way, in tenths of a second, 10 at most. */
  private double passing(double share) {
    double way = reached() - struck();
    if (Math.abs(way) < LEAST_MOVE) {
      return 0;
    }
    for (int i = 0; i < curve.size(); i++) {
      if ((curve.midi().get(i) - struck()) / way >= share) {
        return Math.min(10, (curve.frames().get(i) - at) * 10 / Sampling.FRAME_RATE);
      }
    }
    return 10;
  }

  /** What it has to do with the note before it. */
  private double[] neighbours() {
    double before = before();
    boolean known = !Double.isNaN(before);
    double toStruck = known ? struck() - before : 0;
    double toReached = known ? reached() - before : 0;
    double loud = loudest(at, at + 14);
    return new double[] {
      known ? 1 : 0,
      2 * clipped(toStruck / 2),
      2 * clipped(Math.abs(toStruck) / 2),
      2 * clipped(toReached / 2),
      2 * clipped(Math.abs(toReached) / 2),
      toReached - Math.rint(toReached),
      loud - loudest(at - 20, at - 3),
      loud - loudest(at - 60, at - 3),
      loud - loudest(at - 1, at + 3),
      loud - loudest(at + 12, at + 16),
      loudest(at - 20, at - 8) - loudest(at - 4, at)
    };
  }

  private double loudest(long from, long to) {
    double level = -100;
    for (long i = from; i < to; i++) {
      level = Math.max(level, history.get(i).level());
    }
    return level;
  }

  /** Where the pitch is on its way, against where it goes: at moments, then at shares of it. */
  private double[] course() {
    double[] course = new double[MOMENTS.length + SHARES.length];
    double reached = reached();
    for (int i = 0; i < MOMENTS.length; i++) {
      course[i] = clipped(near(at + MOMENTS[i]) - reached);
    }
    for (int i = 0; i < SHARES.length; i++) {
      int place = (int) (SHARES[i] * (curve.size() - 1));
      course[MOMENTS.length + i] = clipped(curve.midi().get(place) - reached);
    }
    return course;
  }

  /** The pitch at a frame, or at the one after it that has one; at the end that of the last. */
  private double near(long frame) {
    for (int i = 0; i < curve.size(); i++) {
      if (curve.frames().get(i) >= frame) {
        return curve.midi().get(i);
      }
    }
    return curve.midi().get(curve.size() - 1);
  }

  /** Pitch and clearness about the beginning, where a slide passes what a hammer-on leaps over. */
  private double[] around() {
    double[] around = new double[2 * AROUND.length];
    for (int i = 0; i < AROUND.length; i++) {
      Slice slice = history.get(at + AROUND[i]);
      around[2 * i] = slice.voiced() ? clipped(slice.midi() - reached()) : 0;
      around[2 * i + 1] = Math.min(1, slice.dip());
    }
    return around;
  }

  /**
   * How sharply the sound sets in, in time: by blocks of 1.5 ms, of the samples and of their
   * differences, in which the high partials and the noise of a plectrum stand out.
   */
  private double[] attack() {
    float[] sound = new float[(BLOCKS_BEFORE + BLOCKS_AFTER) * BLOCK + 2];
    tape.copy(at * Sampling.HOP - BLOCKS_BEFORE * BLOCK - 2, sound);
    double[] whole = new double[BLOCKS_BEFORE + BLOCKS_AFTER];
    double[] edge = new double[whole.length];
    double[] noise = new double[whole.length];
    for (int i = 2; i < sound.length; i++) {
      int block = (i - 2) / BLOCK;
      double step = sound[i] - sound[i - 1];
      double turn = step - (sound[i - 1] - sound[i - 2]);
      whole[block] += sound[i] * sound[i];
      edge[block] += step * step;
      noise[block] += turn * turn;
    }
    return Stream.of(whole, edge, noise)
        .flatMapToDouble(energy -> DoubleStream.of(sharpness(energy)))
        .toArray();
  }

  /** Of an energy: its peak against before and after, its steepest rise, how long that takes. */
  private static double[] sharpness(double[] energy) {
    double[] level = new double[energy.length];
    for (int i = 0; i < level.length; i++) {
      level[i] = 10 * Math.log10(energy[i] + 1e-9);
    }
    int peak = BLOCKS_BEFORE - 6;
    double steepest = 0;
    for (int i = BLOCKS_BEFORE - 6; i < BLOCKS_BEFORE + 14; i++) {
      peak = level[i] > level[peak] ? i : peak;
      steepest = Math.max(steepest, level[i + 1] - level[i - 1]);
    }
    double before = mean(level, 0, BLOCKS_BEFORE - 8);
    double after = mean(level, BLOCKS_BEFORE + 18, level.length);
    int start = peak;
    while (start > 0 && level[start] > level[peak] - 10) {
      start--;
    }
    return new double[] {
      Math.min(40, level[peak] - before), level[peak] - after, steepest, peak - start
    };
  }

  private static double mean(double[] values, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i];
    }
    return sum / (to - from);
  }

  private static double clipped(double semitones) {
    return Math.max(-WIDEST, Math.min(WIDEST, semitones));
  }
}

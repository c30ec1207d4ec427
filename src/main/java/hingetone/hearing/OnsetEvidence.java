package hingetone.hearing;

import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Slice;

/** What speaks for and against a note beginning at a frame. */
final class OnsetEvidence {
  /** Slices to each side that are looked at. */
  static final int REACH = 20;

  private static final float LEAST_FLUX = 2;
  private static final double LEAST_CHANGE = 0.5;

  /** What is measured, in this order. */
  static final String[] NAMES = {
    "flux",
    "fluxAboveUsual",
    "fluxBefore",
    "bright",
    "step",
    "pitchNew",
    "voicedBefore",
    "voicedAfter",
    "jump",
    "rise",
    "riseLate",
    "riseHigh",
    "riseBetween",
    "levelRise",
    "levelDip",
    "dipBump",
    "levelBelow",
    "clear",
    "stepFar",
    "stepUp",
    "slope",
    "moveFrames",
    "offFret",
    "steady",
    "steadyBefore"
  };

  private final RecentSlices history;
  private final long at;

  OnsetEvidence(RecentSlices history, long at) {
    this.history = history;
    this.at = at;
  }

  /** Whether a note may begin at a frame at all: its flux stands above that of its neighbours. */
  static boolean candidate(RecentSlices history, long at) {
    return fluxPeak(history, at) || move(history, at);
  }

  /** Whether a frame is in the middle of a change of pitch of more than half a semitone. */
  private static boolean move(RecentSlices history, long at) {
    double here = change(history, at);
    if (here < LEAST_CHANGE) {
      return false;
    }
    for (long i = at - 6; i <= at + 6; i++) {
      double other = change(history, i);
      if (other > here || other == here && i < at || fluxPeak(history, i)) {
        return false;
      }
    }
    return true;
  }

  private static double change(RecentSlices history, long at) {
    double before = history.pitch(at - 7, at);
    double after = history.pitch(at + 1, at + 8);
    return Double.isNaN(before) || Double.isNaN(after) ? 0 : Math.abs(after - before);
  }

  private static boolean fluxPeak(RecentSlices history, long at) {
    float flux = history.get(at).flux();
    if (flux < LEAST_FLUX) {
      return false;
    }
    for (long i = at - 4; i <= at + 4; i++) {
      float other = history.get(i).flux();
      if (other > flux || other == flux && i < at) {
        return false;
      }
    }
    return true;
  }

  double[] measures() {
    double before = history.pitch(at - 13, at - 3);
    double after = history.pitch(at + 4, at + 14);
    double step = Double.isNaN(before) || Double.isNaN(after) ? 0 : Math.abs(after - before);
    double pitch = Double.isNaN(after) ? before : after;
    double far = far();
    double usual = usualFlux();
    return new double[] {
      Math.log(1 + history.get(at).flux()),
      Math.log((1 + history.get(at).flux()) / (1 + usual)),
      Math.log(1 + highest(at - 20, at - 5)),
      Math.log(1 + brightest()),
      Math.min(1, step),
      Double.isNaN(before) != Double.isNaN(after) ? 1 : 0,
      voiced(at - 13, at - 3),
      voiced(at + 4, at + 14),
      Math.min(1, jump()),
      Double.isNaN(pitch) ? 0 : rise(pitch, 1, 10, 2, 5, 0),
      Double.isNaN(pitch) ? 0 : rise(pitch, 1, 10, 6, 11, 0),
      Double.isNaN(pitch) ? 0 : rise(pitch, 5, 12, 3, 8, 0),
      Double.isNaN(pitch) ? 0 : rise(pitch, 1, 10, 3, 8, 0.5),
      loudest(at, at + 8) - loudest(at - 8, at - 2),
      loudest(at - 14, at - 6) - softest(at - 6, at + 3),
      bump(),
      Math.max(-60, loudest(at, at + 10) - loudest(at - 200, at + 20)),
      1 - clear(at + 4, at + 14),
      Math.min(5, Math.abs(far)),
      Math.max(-1, Math.min(1, far)),
      slope(),
      moveFrames(),
      Math.abs(far - Math.rint(far)),
      spread(at + 5, at + 15),
      spread(at - 15, at - 5),
    };
  }

  /** From the pitch well before to the pitch well after, in semitones. */
  private double far() {
    double before = history.pitch(at - 22, at - 8);
    double after = history.pitch(at + 8, at + 20);
    return Double.isNaN(before) || Double.isNaN(after) ? 0 : after - before;
  }

  /** The pitch's way over 35 ms, in semitones, 3 at most. */
  private double slope() {
    double before = history.pitch(at - 4, at - 1);
    double after = history.pitch(at + 2, at + 5);
    boolean known = !Double.isNaN(before) && !Double.isNaN(after);
    return known ? Math.min(3, Math.abs(after - before)) : 0;
  }

  /** How many frames around are neither at the pitch before nor at that after. */
  private double moveFrames() {
    double before = history.pitch(at - 22, at - 8);
    double after = history.pitch(at + 8, at + 20);
    int count = 0;
    for (long i = at - 15; i <= at + 15; i++) {
      double midi = pitch(i);
      boolean there = Math.abs(midi - before) > 0.25 && Math.abs(midi - after) > 0.25;
      count += !Double.isNaN(midi) && there ? 1 : 0;
    }
    return Double.isNaN(before) || Double.isNaN(after) ? 0 : count / 10.0;
  }

  /** How far the pitch wanders within a stretch, in semitones, 2 at most. */
  private double spread(long from, long to) {
    double low = Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    for (long i = from; i < to; i++) {
      double midi = pitch(i);
      if (!Double.isNaN(midi)) {
        low = Math.min(low, midi);
        high = Math.max(high, midi);
      }
    }
    return high < low ? 2 : Math.min(2, high - low);
  }

  /** The pitch of a clear frame; not a number otherwise. */
  private double pitch(long frame) {
    Slice slice = history.get(frame);
    return slice.clear() ? slice.midi() : Double.NaN;
  }

  /** How far a clear frame is from periodic; 1 otherwise. */
  private double dip(long frame) {
    Slice slice = history.get(frame);
    return slice.clear() ? slice.dip() : 1;
  }

  private double usualFlux() {
    double[] around = new double[80];
    for (int i = 0; i < around.length; i++) {
      around[i] = history.get(at - 40 + Math.min(i, 40 + REACH)).flux();
    }
    return RecentSlices.median(around);
  }

  private double highest(long from, long to) {
    double highest = 0;
    for (long i = from; i < to; i++) {
      highest = Math.max(highest, history.get(i).flux());
    }
    return highest;
  }

  private double brightest() {
    double highest = 0;
    for (long i = at - 2; i <= at + 3; i++) {
      highest = Math.max(highest, history.get(i).bright());
    }
    return highest;
  }

  private double voiced(long from, long to) {
    int count = 0;
    for (long i = from; i < to; i++) {
      count += history.get(i).clear() ? 1 : 0;
    }
    return (double) count / (to - from);
  }

  private double clear(long from, long to) {
    double sum = 0;
    for (long i = from; i < to; i++) {
      sum += dip(i);
    }
    return sum / (to - from);
  }

  /** The largest pitch step from a frame to the next, in semitones. */
  private double jump() {
    double jump = 0;
    double last = Double.NaN;
    for (long i = at - 6; i <= at + 8; i++) {
      double now = pitch(i);
      if (!Double.isNaN(now)) {
        jump = Double.isNaN(last) ? jump : Math.max(jump, Math.abs(now - last));
        last = now;
      }
    }
    return jump;
  }

  /** By how many dB the harmonics of a pitch rose, on average, or what lies between them. */
  private double rise(double midi, int first, int last, int from, int to, double shift) {
    double hertz = Sampling.hertz(midi);
    double sum = 0;
    int count = 0;
    for (int harmonic = first; harmonic <= last; harmonic++) {
      double bin = (harmonic + shift) * hertz * 1024 / Sampling.RATE;
      if (bin < 500) {
        double change = level(bin, at + from, at + to) - level(bin, at - 8, at - 3);
        sum += Math.max(-15, Math.min(25, change));
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  /** The mean level around a bin in dB above the floor. */
  private double level(double bin, long from, long to) {
    double sum = 0;
    int middle = (int) Math.round(bin);
    for (long i = from; i < to; i++) {
      Slice frame = history.get(i);
      float[] m = frame.magnitudes();
      double peak = Math.max(m[middle], Math.max(m[middle - 1], m[middle + 1]));
      sum += Math.log10(1 + peak / frame.floor());
    }
    return 20 * sum / (to - from);
  }

  private double loudest(long from, long to) {
    double level = -140;
    for (long i = from; i < to; i++) {
      level = Math.max(level, history.get(i).level());
    }
    return level;
  }

  private double softest(long from, long to) {
    double level = 10;
    for (long i = from; i < to; i++) {
      level = Math.min(level, history.get(i).level());
    }
    return level;
  }

  /** How much less periodic the sound is around the frame than before it. */
  private double bump() {
    double worst = 0;
    for (long i = at - 3; i <= at + 4; i++) {
      worst = Math.max(worst, dip(i));
    }
    double[] old = new double[8];
    for (int i = 0; i < old.length; i++) {
      old[i] = dip(at - 13 + i);
    }
    return Math.min(1, worst - Math.min(worst, RecentSlices.median(old)));
  }
}

package hingetone.hearing.signal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** Sound cut into frames {@value Sampling#HOP} samples apart, each measured around its middle. */
public final class Slices {
  private static final int SPECTRUM = 1024;
  private static final int LEVEL = 512;

  /** How late the path decides: 116 ms. */
  static final int PATH_LAG = 20;

  /** Magnitudes further below the loudest of late do not count, in dB. */
  private static final double RANGE_DB = 50;

  private static final double LEAST_FLOOR = 2e-5;

  /** The loudest of late fades to half in this many frames: 4 s. */
  private static final double HALF_LIFE = 4 * Sampling.FRAME_RATE;

  /** Levels this far below the loudest of late still belong to the playing. */
  private static final double PLAYING_DB = 35;

  private static final double SILENT_DB = -65;

  /** How the loudest level of late sinks from frame to frame: 1.5 dB a second. */
  private static final double FADE_DB = 1.5 / Sampling.FRAME_RATE;

  private final RecentSamples tape;
  private final Yin yin = new Yin();
  private final Spectrum spectrum = new Spectrum(SPECTRUM);
  private final Flux flux = new Flux(spectrum);
  private final PitchPath path = new PitchPath(PATH_LAG);
  private final Deque<Slice> undecided = new ArrayDeque<>();
  private final float[] around = new float[Yin.FRAME];
  private long next;
  private double loudest;
  private double loudestLevel = SILENT_DB;

  public Slices(RecentSamples tape) {
    this.tape = tape;
  }

  /** Slices that the tape has become long enough for. */
  public List<Slice> ready() {
    List<Slice> decided = new ArrayList<>();
    while (next * Sampling.HOP + Yin.FRAME / 2 < tape.end()) {
      measure().ifPresent(decided::add);
    }
    return decided;
  }

  /** The frames that are left when the sound has ended. */
  public List<Slice> rest() {
    List<Slice> decided = new ArrayList<>();
    while (next * Sampling.HOP < tape.end()) {
      measure().ifPresent(decided::add);
    }
    for (Optional<Yin.Candidate> pitch : path.rest()) {
      decided.add(undecided.removeFirst().withPitch(pitch));
    }
    return decided;
  }

  private Optional<Slice> measure() {
    tape.copy(next * Sampling.HOP - Yin.FRAME / 2, around);
    next++;
    float[] magnitudes = spectrum.magnitudes(around, (Yin.FRAME - SPECTRUM) / 2);
    double peak = 0;
    for (float magnitude : magnitudes) {
      peak = Math.max(peak, magnitude);
    }
    loudest = Math.max(peak, loudest * Math.pow(0.5, 1 / HALF_LIFE));
    double floor = Math.max(LEAST_FLOOR, loudest * Math.pow(10, -RANGE_DB / 20));
    Flux.Rise rise = flux.next(magnitudes, floor);
    double level = level();
    loudestLevel = Math.max(level, loudestLevel - FADE_DB);
    undecided.addLast(
        new Slice(Optional.empty(), level, rise.all(), rise.bright(), magnitudes, floor));
    boolean loud = level > Math.max(SILENT_DB, loudestLevel - PLAYING_DB);
    return path.next(yin.candidates(around, 0), loud)
        .map(pitch -> undecided.removeFirst().withPitch(pitch));
  }

  private double level() {
    int from = (Yin.FRAME - LEVEL) / 2;
    double energy = 0;
    for (int i = from; i < from + LEVEL; i++) {
      energy += around[i] * around[i];
    }
    return Sampling.decibels(Math.sqrt(energy / LEVEL));
  }
}

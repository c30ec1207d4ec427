package hingetone.hearing.live;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Yin;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The pitch of each attack as early as it can be told, for what must answer while a player plays:
 * an attack is a sudden rise of the level, and its pitch is that of the samples since, as soon as
 * three looks in turn agree. What is not picked, and how a note goes on, is left to {@link
 * hingetone.hearing.Ear}.
 */
public final class FirstHearing {
  /** Samples from one look to the next: 2.9 ms. */
  private static final int HOP = 64;

  private static final int LONGEST = (int) (Sampling.RATE / 76.0);
  private static final int SHORTEST = (int) (Sampling.RATE / Yin.HIGHEST_HERTZ);

  /** The noise of the plectrum, left out. */
  private static final int ATTACK = 4 * HOP;

  /** An attack whose pitch is not told by now is given up: 90 ms. */
  private static final int LATEST = 31 * HOP;

  private static final double RISE_DB = 6;
  private static final double SOFTEST_DB = -55;
  private static final double LOUD_ENOUGH_DB = 28;
  private static final int LEVELS = 6;
  private static final int APART = 16 * HOP;
  private static final double DIP = 0.15;

  /** The first dip this close to the deepest is the period, not a multiple of it. */
  private static final double CLOSE = 0.22;

  /**
   * Three periods may look much deeper than one, where partials beat; no string has only thirds.
   */
  private static final double CLOSE_TO_THREE = 0.35;

  /** A third of the longest dip is this near to it, in periods. */
  private static final double THIRD = 0.1;

  /** Periods in a stretch, at least, so that one can be told. */
  private static final double PERIODS = 2.4;

  private static final double AGREE = 0.08;

  /** How often in turn a look must agree with the one before. */
  private static final int AGREEING = 2;

  private final RecentSamples tape = new RecentSamples(1 << 15);
  private final double[] levels = new double[LEVELS];
  private long next = HOP;
  private long onset = Long.MIN_VALUE / 2;
  private boolean asking;
  private double loudest = SOFTEST_DB;
  private Optional<Double> last = Optional.empty();
  private int agreeing;

  /**
   * An attack and its pitch.
   *
   * @param at seconds from the start to the attack
   * @param midi MIDI number with fractions
   * @param heardAt seconds from the start to the last sample that was needed
   */
  public record Attack(double at, double midi, double heardAt) {}

  /** Takes more sound, at {@link Sampling#RATE}; gives the attacks whose pitch it tells. */
  public List<Attack> hear(float[] samples) {
    List<Attack> told = new ArrayList<>();
    tape.add(samples, samples.length);
    for (; next <= tape.end(); next += HOP) {
      listen();
      if (asking && next - onset >= ATTACK + 2L * SHORTEST + HOP) {
        ask().ifPresent(midi -> told.add(new Attack(time(onset), midi, time(next))));
      }
    }
    return told;
  }

  private static double time(long sample) {
    return (double) sample / Sampling.RATE;
  }

  /** Whether the level of the differences rises suddenly, in which a new attack stands out. */
  private void listen() {
    float[] block = new float[HOP + 1];
    tape.copy(next - HOP - 1, block);
    double energy = 0;
    for (int i = 1; i < block.length; i++) {
      double step = 2 * (block[i] - block[i - 1]);
      energy += step * step;
    }
    double level = Sampling.decibels(Math.sqrt(energy / HOP));
    double before = 0;
    for (int i = 0; i < LEVELS - 2; i++) {
      before = Math.max(before == 0 ? -200 : before, levels[i]);
    }
    System.arraycopy(levels, 1, levels, 0, LEVELS - 1);
    levels[LEVELS - 1] = level;
    loudest = Math.max(level, loudest - 0.005);
    boolean loud = level > Math.max(SOFTEST_DB, loudest - LOUD_ENOUGH_DB);
    if (loud && level > before + (asking ? RISE_DB : RISE_DB / 2) && next - onset > APART) {
      onset = next - HOP;
      asking = true;
      last = Optional.empty();
      agreeing = 0;
    }
    asking = asking && next - onset < LATEST;
  }

  private Optional<Double> ask() {
    int count = (int) (next - onset) - ATTACK;
    float[] since = new float[count];
    tape.copy(onset + ATTACK, since);
    Optional<Double> now = pitch(since);
    boolean same = now.isPresent() && last.isPresent() && Math.abs(now.get() - last.get()) < AGREE;
    agreeing = same ? agreeing + 1 : 0;
    last = now;
    boolean agreed = agreeing >= AGREEING;
    asking = !agreed;
    return agreed ? now : Optional.empty();
  }

  /** The pitch of a short stretch: the first dip that is about as deep as the deepest. */
  static Optional<Double> pitch(float[] sound) {
    int longest = Math.min(LONGEST, (int) (sound.length / PERIODS));
    double[] dips = dips(sound, longest + 1);
    int deepest = SHORTEST;
    for (int lag = SHORTEST; lag <= longest; lag++) {
      deepest = dips[lag] < dips[deepest] ? lag : deepest;
    }
    int found = -1;
    for (int lag = SHORTEST; lag <= longest && found < 0 && dips[deepest] < DIP; lag++) {
      boolean dip = dips[lag] <= dips[lag - 1] && dips[lag] <= dips[lag + 1];
      boolean third = Math.abs((double) deepest / lag - 3) < THIRD;
      double close = third ? CLOSE_TO_THREE : CLOSE;
      found = dip && dips[lag] < dips[deepest] + close ? lag : found;
    }
    if (found < 0) {
      return Optional.empty();
    }
    double curve = dips[found - 1] - 2 * dips[found] + dips[found + 1];
    double shift = curve <= 0 ? 0 : 0.5 * (dips[found - 1] - dips[found + 1]) / curve;
    return Optional.of(Sampling.midi(Sampling.RATE / (found + shift)));
  }

  /** YIN's normalised difference over as many samples as each lag leaves, evened out. */
  private static double[] dips(float[] sound, int lags) {
    double[] dips = new double[lags + 1];
    dips[0] = 1;
    double sum = 0;
    for (int lag = 1; lag <= lags; lag++) {
      double difference = 0;
      int window = sound.length - lag;
      for (int i = 0; i < window; i++) {
        double step = sound[i] - sound[i + lag];
        difference += step * step;
      }
      dips[lag] = difference / window;
      sum += dips[lag];
      dips[lag] = sum <= 0 ? 1 : dips[lag] * lag / sum;
    }
    return dips;
  }
}

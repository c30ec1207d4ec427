package hingetone.hearing;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.RecentSlices;
import hingetone.hearing.signal.Sampling;
import hingetone.hearing.signal.Spectrum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tells whether two strings sound at once, and which pitches they have. */
final class Pairs {
  private static final TrainedJudge JUDGE = TrainedJudge.named("pairs.txt");
  private static final double LEAST_CERTAINTY = 0.5;
  private static final int LOWEST = 39;
  private static final int HIGHEST = 84;

  /** A string's own partials lie no further below the loudest, in dB. */
  private static final double SOFTEST = -42;

  /** What a spectrum leaves out of the attack: 15 ms. */
  private static final int ATTACK = 330;

  private final RecentSamples tape;
  private final RecentSlices history;
  private final Spectrum fine = new Spectrum(4096);
  private final Spectrum coarse = new Spectrum(2048);

  /**
   * Two pitches at once.
   *
   * @param low MIDI number with fractions of the lower
   * @param high that of the higher
   * @param certainty 0 to 1
   */
  record Pair(double low, double high, double certainty) {}

  /** A pair that may be, with what is measured of it. */
  record Hypothesis(double low, double high, int interval, double[] measures) {}

  Pairs(RecentSamples tape, RecentSlices history) {
    this.tape = tape;
    this.history = history;
  }

  /** The pair that sounds between two frames, if one does. */
  Optional<Pair> pair(long from, long to) {
    Optional<Pair> best = Optional.empty();
    for (Hypothesis hypothesis : hypotheses(from, to)) {
      double certainty = JUDGE.judge(hypothesis.measures)[1];
      if (certainty > best.map(Pair::certainty).orElse(LEAST_CERTAINTY)) {
        best = Optional.of(new Pair(hypothesis.low, hypothesis.high, certainty));
      }
    }
    return best;
  }

  /** Every pair that may sound; none where the stretch is too short to tell. */
  List<Hypothesis> hypotheses(long from, long to) {
    int samples = (int) (to - from) * Sampling.HOP - ATTACK;
    if (samples < 0.75 * coarse.size()) {
      return List.of();
    }
    Spectrum spectrum = samples < 0.9 * fine.size() ? coarse : fine;
    float[] sound = new float[spectrum.size()];
    long onset = from * Sampling.HOP;
    tape.copy(onset + ATTACK, sound);
    float[] after = spectrum.magnitudes(sound, 0);
    tape.copy(onset - 100 - spectrum.size(), sound);
    Partials partials = new Partials(after, spectrum.magnitudes(sound, 0), spectrum.binHertz());
    PairEvidence evidence = evidence(partials, from, to);
    List<Hypothesis> found = new ArrayList<>();
    for (int low = LOWEST; low <= HIGHEST; low++) {
      for (int interval : PairEvidence.INTERVALS) {
        if (sounds(partials, low) && sounds(partials, low + interval)) {
          double a = Sampling.midi(evidence.tuned(Sampling.hertz(low)));
          double b = Sampling.midi(evidence.tuned(Sampling.hertz(low + interval)));
          found.add(new Hypothesis(a, b, interval, evidence.measures(low, interval)));
        }
      }
    }
    return found;
  }

  private static boolean sounds(Partials partials, double midi) {
    double hertz = Sampling.hertz(midi);
    return Math.max(partials.level(hertz), partials.level(2 * hertz)) > SOFTEST;
  }

  private PairEvidence evidence(Partials partials, long from, long to) {
    long end = Math.min(to, from + 40);
    double heard = history.pitch(from + 4, end);
    double dip = 0;
    int voiced = 0;
    double level = -140;
    for (long i = from + 4; i < end; i++) {
      dip += history.get(i).clear() ? history.get(i).dip() : 1;
      voiced += history.get(i).clear() ? 1 : 0;
      level = Math.max(level, history.get(i).level());
    }
    double count = Math.max(1, end - from - 4);
    double loudest = level;
    for (long i = from - 200; i < from; i++) {
      loudest = Math.max(loudest, history.get(i).level());
    }
    return new PairEvidence(partials, heard, dip / count, voiced / count, level - loudest);
  }
}

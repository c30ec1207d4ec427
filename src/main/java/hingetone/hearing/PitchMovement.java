package hingetone.hearing;

import hingetone.hearing.signal.RecentSlices;

/**
 * How a note's pitch moves.
 *
 * @param struck where it begins
 * @param reached where it goes
 * @param technique what that is called
 * @param vibrato whether it swings
 */
record PitchMovement(double struck, double reached, Technique technique, boolean vibrato) {
  private static final double CURL_FROM = 0.22;
  private static final double BEND_FROM = 0.72;
  private static final double LARGEST_BEND = 3.4;

  static PitchMovement of(PitchCurve curve, Onset onset, RecentSlices history) {
    double struck = curve.median(0, Math.min(1, Math.max(0.12, 6.0 / curve.size())));
    double tail = Math.min(1, Math.max(0.3, 8.0 / curve.size()));
    double reached = curve.median(1 - tail, 1);
    double top = curve.quantile(0, curve.size(), 0.9);
    boolean vibrato = Vibrato.in(curve);
    if (onset.kind() == Onset.Kind.LEGATO) {
      double whole = reached;
      return new PitchMovement(whole, whole, Technique.LEGATO, vibrato);
    }
    if (onset.kind() == Onset.Kind.SLIDE) {
      double from = history.pitch(onset.frame() - 20, onset.frame() - 6);
      return new PitchMovement(
          Double.isNaN(from) ? struck : from, reached, Technique.SLIDE, vibrato);
    }
    double way = reached - struck;
    Technique technique = Technique.PLAIN;
    if (top - Math.max(struck, reached) > 0.6) {
      technique = Technique.RELEASE;
    } else if (Math.abs(way) > LARGEST_BEND) {
      technique = Technique.SLIDE;
    } else if (way > BEND_FROM) {
      technique = Technique.BEND;
    } else if (way > CURL_FROM && !vibrato) {
      technique = Technique.CURL;
    } else if (way < -BEND_FROM) {
      technique = Technique.PREBEND;
    }
    return new PitchMovement(
        technique == Technique.PLAIN ? reached : struck, reached, technique, vibrato);
  }
}

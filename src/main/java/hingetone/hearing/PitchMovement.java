package hingetone.hearing;

/**
 * How a note's pitch moves.
 *
 * @param struck where it begins
 * @param reached where it goes
 * @param technique what that is called
 * @param vibrato whether it swings
 */
record PitchMovement(double struck, double reached, Technique technique, boolean vibrato) {
  private static final TrainedJudge JUDGE = TrainedJudge.named("techniques.txt");

  /** A bend and a curl push a string at least so far, in semitones. */
  private static final double BEND_FROM = 0.6;

  private static final double CURL_FROM = 0.2;
  private static final double CURL_TO = 0.9;

  private static final double SAME_FRET = 0.5;

  /** Semitones on a string that a hand spans: four frets and a stretch (common practice). */
  private static final double HAND = 5.5;

  static PitchMovement of(TechniqueEvidence evidence, Onset.Kind kind) {
    double[] classes = JUDGE.judge(evidence.measures());
    Technique technique = Technique.PLAIN;
    for (Technique other : Technique.values()) {
      boolean likelier = classes[other.ordinal()] > classes[technique.ordinal()];
      technique = likelier && possible(evidence, other) ? other : technique;
    }
    return new PitchMovement(
        struck(evidence, kind, technique), evidence.reached(), technique, evidence.vibrato());
  }

  /** Whether the pitch moves as a technique has it. */
  private static boolean possible(TechniqueEvidence evidence, Technique technique) {
    double way = evidence.reached() - evidence.struck();
    return switch (technique) {
      case BEND -> way > BEND_FROM;
      case PREBEND -> way < -BEND_FROM;
      case RELEASE -> evidence.top() - evidence.struck() > BEND_FROM;
      case CURL -> way > CURL_FROM && way < CURL_TO;
      case LEGATO -> reachable(evidence);
      case PLAIN, SLIDE -> true;
    };
  }

  /** Whether fingers of one hand reach from the note before to this one on a string. */
  private static boolean reachable(TechniqueEvidence evidence) {
    double step = Math.abs(evidence.reached() - evidence.before());
    return step > SAME_FRET && step < HAND;
  }

  /** The pitch it comes from: of a slide without an attack that of the note before. */
  private static double struck(TechniqueEvidence evidence, Onset.Kind kind, Technique technique) {
    double before = evidence.before();
    return switch (technique) {
      case PLAIN, LEGATO -> evidence.reached();
      case SLIDE -> kind == Onset.Kind.PICKED || Double.isNaN(before) ? evidence.struck() : before;
      case BEND, PREBEND, RELEASE, CURL -> evidence.struck();
    };
  }
}

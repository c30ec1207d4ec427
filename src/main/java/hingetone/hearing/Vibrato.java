package hingetone.hearing;

import hingetone.hearing.signal.Sampling;

/** Whether a pitch swings as in vibrato: 3.5 to 9 times a second, about a middle that stays. */
final class Vibrato {
  private static final double LEAST_WIDTH = 0.12;
  private static final double SLOWEST = 3.5;
  private static final double FASTEST = 9;
  private static final int FEWEST_TURNS = 3;

  private Vibrato() {}

  static boolean in(PitchCurve curve) {
    int turns = 0;
    double extreme = curve.midi().get(0);
    int direction = 0;
    int firstTurn = 0;
    int lastTurn = 0;
    for (int i = 1; i < curve.size(); i++) {
      double now = curve.midi().get(i);
      if (direction * (now - extreme) > 0 || direction == 0 && now != extreme) {
        direction = direction == 0 ? (int) Math.signum(now - extreme) : direction;
        extreme = now;
        continue;
      }
      if (Math.abs(now - extreme) > LEAST_WIDTH) {
        direction = -direction;
        extreme = now;
        firstTurn = turns == 0 ? i : firstTurn;
        lastTurn = i;
        turns++;
      }
    }
    if (turns < FEWEST_TURNS) {
      return false;
    }
    double seconds = (lastTurn - firstTurn) / Sampling.FRAME_RATE;
    double rate = (turns - 1) / (2 * seconds);
    return rate >= SLOWEST && rate <= FASTEST;
  }
}

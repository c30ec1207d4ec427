package hingetone.hearing;

import java.util.List;

/** How far a whole recording is from A = 440 Hz: the mean direction of its pitches on a circle. */
final class TuningDrift {
  private TuningDrift() {}

  /** In cents, above −50 to 50; 0 where nothing tells. Long sure notes that stay count most. */
  static double cents(List<HeardNote> notes) {
    double x = 0;
    double y = 0;
    for (HeardNote note : notes) {
      boolean stays = note.technique() == Technique.PLAIN || note.technique() == Technique.LEGATO;
      if (stays && !note.vibrato()) {
        double weight = note.certainty() * Math.min(1, note.end() - note.at());
        x += weight * Math.cos(2 * Math.PI * note.reached());
        y += weight * Math.sin(2 * Math.PI * note.reached());
      }
    }
    return x == 0 && y == 0 ? 0 : 100 * Math.atan2(y, x) / (2 * Math.PI);
  }
}

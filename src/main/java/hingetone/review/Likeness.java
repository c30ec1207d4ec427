package hingetone.review;

import hingetone.take.PlacedNote;
import java.util.List;

/**
 * How much of a phrase comes back in a later one. Notes are points of time and pitch; one shift in
 * both is looked for under which most of the earlier phrase's points fall on the later one's: the
 * idea of geometric pattern discovery (Meredith, Lemström and Wiggins 2002) within two phrases, the
 * shift being one that takes one of the first notes to one of the first, which forgives notes that
 * are missing, wrong or ornaments.
 *
 * @param semitones how far the later one lies above
 * @param beats how much later in its bar it begins
 * @param opening how many of the earlier one's first notes come back
 * @param openingOf of how many
 * @param all how many of all its notes come back
 */
record Likeness(int semitones, double beats, int opening, int openingOf, int all) {
  private static final int OPENING = 6;
  private static final int ANCHORS = 3;

  /** Strokes that lie nearer to where they are expected than this part of a beat are the same. */
  private static final double NEAR = 0.18;

  /** The best likeness of two phrases, neither empty. */
  static Likeness of(Played played, List<PlacedNote> then, List<PlacedNote> now) {
    Likeness best = new Likeness(0, 0, 0, 1, 0);
    for (int a = 0; a < Math.min(ANCHORS, then.size()); a++) {
      for (int b = 0; b < Math.min(ANCHORS, now.size()); b++) {
        Likeness found = of(played, then, now, then.get(a), now.get(b));
        best = found.isMoreThan(best) ? found : best;
      }
    }
    return best;
  }

  private boolean isMoreThan(Likeness other) {
    return opening > other.opening || opening == other.opening && all > other.all;
  }

  /** The share of the opening that comes back, 0 to 1. */
  double share() {
    return (double) opening / openingOf;
  }

  private static Likeness of(
      Played played, List<PlacedNote> then, List<PlacedNote> now, PlacedNote from, PlacedNote to) {
    double beat = played.barAt(to.at()).beatLength();
    int semitones = to.pitch() - from.pitch();
    int opening = 0;
    int all = 0;
    int next = 0;
    for (int i = 0; i < then.size(); i++) {
      double place = to.at() + (then.get(i).at() - from.at());
      while (next < now.size() && now.get(next).at() < place - NEAR * beat) {
        next++;
      }
      boolean found = false;
      for (int k = next; k < now.size() && now.get(k).at() <= place + NEAR * beat; k++) {
        found |= now.get(k).pitch() - then.get(i).pitch() == semitones;
      }
      all += found ? 1 : 0;
      opening += found && i < OPENING ? 1 : 0;
    }
    int beats = played.barAt(to.at()).of().meter().beatsPerBar();
    double shift = played.barAt(to.at()).beat(to.at()) - played.barAt(from.at()).beat(from.at());
    double turned = shift - beats * Math.rint(shift / beats);
    int openingOf = Math.min(OPENING, Math.max(then.size(), 1));
    return new Likeness(semitones, Math.rint(turned * 2) / 2, opening, openingOf, all);
  }
}

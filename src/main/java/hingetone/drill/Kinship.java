package hingetone.drill;

import hingetone.take.PlacedNote;
import java.util.List;

/**
 * What a phrase shares with an earlier one, both laid on their main notes: the best of all shifts
 * in pitch, notes that fall together within a fifth of a beat being the same stroke.
 *
 * @param rhythm the share of strokes that both have, 0 to 1
 * @param opening the share of the earlier one's first half that comes back, in rhythm and pitch
 * @param all the same of the whole
 * @param semitones how far the later one lies above
 */
record Kinship(double rhythm, double opening, double all, int semitones) {
  private static final double TOGETHER = 0.2;
  private static final int REACH = 24;
  static final Kinship NONE = new Kinship(0, 0, 0, 0);

  /**
   * Compares two phrases, in the order of their notes.
   *
   * @param shift how much later the second one is meant to be, in quarter notes
   * @param beat how long a beat is, in quarter notes
   */
  static Kinship of(List<PlacedNote> then, List<PlacedNote> now, double shift, double beat) {
    if (then.isEmpty() || now.isEmpty()) {
      return NONE;
    }
    Kinship best = NONE;
    for (int semitones = -REACH; semitones <= REACH; semitones++) {
      Kinship found = of(then, now, shift, beat, semitones);
      boolean nearer = found.all == best.all && Math.abs(semitones) < Math.abs(best.semitones);
      best = found.all > best.all || nearer ? found : best;
    }
    return best;
  }

  private static Kinship of(
      List<PlacedNote> then, List<PlacedNote> now, double shift, double beat, int semitones) {
    int strokes = 0;
    int same = 0;
    int opening = 0;
    int openingOf = (then.size() + 1) / 2;
    for (int i = 0; i < then.size(); i++) {
      PlacedNote note = then.get(i);
      boolean together = false;
      boolean equal = false;
      for (PlacedNote other : now) {
        boolean there = Math.abs(other.at() - note.at() - shift) <= TOGETHER * beat;
        together |= there;
        equal |= there && other.pitch() - note.pitch() == semitones;
      }
      strokes += together ? 1 : 0;
      same += equal ? 1 : 0;
      opening += equal && i < openingOf ? 1 : 0;
    }
    int longer = Math.max(then.size(), now.size());
    return new Kinship(
        (double) strokes / longer, (double) opening / openingOf, (double) same / longer, semitones);
  }
}

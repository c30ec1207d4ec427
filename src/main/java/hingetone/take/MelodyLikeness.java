package hingetone.take;

import java.util.List;

/**
 * How much a line of notes is like a solo, 0 to 1: one note at a time, enough of them, on enough
 * different pitches, not in the bass. Our own measure: it chooses among the tracks of a file where
 * nobody says which one is meant.
 */
final class MelodyLikeness {
  private static final double ENOUGH_NOTES = 24;
  private static final double ENOUGH_PITCHES = 6;
  private static final double BASS = 48;
  private static final double IN_THE_BASS = 0.5;

  private MelodyLikeness() {}

  /** Of notes in order of their strokes. */
  static double of(List<PlacedNote> notes) {
    if (notes.isEmpty()) {
      return 0;
    }
    long pitches = notes.stream().map(PlacedNote::pitch).distinct().count();
    double height = notes.stream().mapToInt(PlacedNote::pitch).average().orElseThrow();
    return alone(notes)
        * (0.3 + 0.7 * Math.min(1, notes.size() / ENOUGH_NOTES))
        * Math.min(1, pitches / ENOUGH_PITCHES)
        * (height < BASS ? IN_THE_BASS : 1);
  }

  /** The share of the notes that end before the next begins, or hardly after. */
  private static double alone(List<PlacedNote> notes) {
    double alone = 1;
    for (int i = 1; i < notes.size(); i++) {
      PlacedNote before = notes.get(i - 1);
      double over = before.end() - notes.get(i).at();
      alone += over <= Math.min(0.1, before.length() / 2) ? 1 : 0;
    }
    return alone / notes.size();
  }
}

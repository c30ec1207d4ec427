package hingetone.backing;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;

/** What a number says over a chord: 3 is the chord's third, whichever it has. */
final class ChordDegrees {
  private static final int MINOR_SEVENTH = 10;
  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};

  private ChordDegrees() {}

  /**
   * The pitch class (0 to 11) of a degree, 1 to 7: the chord's own note of that number, else the
   * key's, else the major scale's on the chord's root. A major chord's sixth is the major one.
   */
  static int chroma(int degree, Chord chord, Key key) {
    for (Interval interval : chord.quality().intervals()) {
      if (interval.simple().number() == degree && interval.number() <= 7) {
        return chord.root().plus(interval).chroma();
      }
    }
    if (degree == 7) {
      return Math.floorMod(chord.root().chroma() + MINOR_SEVENTH, 12);
    }
    boolean majorSixth = degree == 6 && chord.quality().has(4);
    for (NoteName note : key.heptatonic().notes()) {
      if (!majorSixth && chord.root().to(note).number() == degree) {
        return note.chroma();
      }
    }
    return Math.floorMod(chord.root().chroma() + MAJOR[degree - 1], 12);
  }
}

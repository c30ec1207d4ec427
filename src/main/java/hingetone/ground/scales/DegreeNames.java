package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** Names a note by its place over a chord or in a key, as players say it. */
public final class DegreeNames {
  private static final List<String> PLAIN =
      List.of("1", "b9", "9", "b3", "3", "11", "b5", "5", "b13", "13", "b7", "7");

  private DegreeNames() {}

  /**
   * A note over a chord: {@code b3} or {@code #9} as the chord calls its own notes, any other as a
   * tension above the octave: F over Cm7 is {@code 11}, Eb over G7#9 {@code b13}.
   */
  public static String over(Chord chord, NoteName note) {
    Optional<Interval> own = chord.degreeOf(note.chroma());
    if (own.isPresent()) {
      return own.get().toString();
    }
    Interval interval = chord.root().to(note);
    if (interval.semitones() % 12 == 3 && chord.quality().has(4)) {
      return "#9";
    }
    if (Math.abs(interval.alteration()) > 1 || interval.simple().number() == 1) {
      return PLAIN.get(Math.floorMod(note.chroma() - chord.root().chroma(), 12));
    }
    boolean tension = List.of(2, 4, 6).contains(interval.number());
    return (tension ? interval.plus(Interval.OCTAVE) : interval).toString();
  }

  /** A note in a key: the degree it has as the key spells it, {@code b3} for Eb in C minor. */
  public static Interval in(Key key, NoteName note) {
    return key.degreeOf(note.chroma());
  }
}

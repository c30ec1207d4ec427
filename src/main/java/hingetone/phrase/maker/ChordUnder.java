package hingetone.phrase.maker;

import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What sounds under one note of a phrase, and how a pitch class (0 to 11) sits over it. The tastes
 * are common practice.
 *
 * @param key the key there
 * @param chord the chord; empty for none
 * @param scale the scale that the map chose for the chord in its place
 * @param landingTones what a phrase may land on: the chord's notes, in some places a riff's
 * @param riff whether the section stands on a riff or on power chords
 */
record ChordUnder(
    Key key, Optional<Chord> chord, Scale scale, Set<Integer> landingTones, boolean riff) {
  private static final int FEW = 6;
  private static final int FLAT_FIFTH = 6;
  private static final int SIXTH = 9;
  private static final double CHORD_ONLY = 0.3;
  private static final double SMALL = 0.1;
  private static final double COLOUR = 0.5;
  private static final double BLUE = 0.8;
  private static final double OF_THE_KEY = 0.9;

  /** Whether the map's scale has it. */
  boolean inScale(int chroma) {
    return scale.degreeOf(chroma).isPresent();
  }

  boolean inChord(int chroma) {
    return landingTones.contains(chroma);
  }

  /** Whether it lies a semitone above a note of the chord, so that it wants to move on. */
  boolean rubs(int chroma) {
    return !inChord(chroma) && inChord(Math.floorMod(chroma - 1, 12));
  }

  /** Third and seventh, by which a change of chord is heard; neither over a riff. */
  boolean isGuideTone(int chroma) {
    return !riff
        && chord
            .filter(c -> inChord(chroma))
            .filter(c -> Set.of(3, 4, 10, 11).contains(above(c, chroma)))
            .isPresent();
  }

  /** The major third of a dominant: the leading note of the key it leads to. */
  boolean isThirdOfDominant(int chroma) {
    return !riff
        && chord
            .filter(c -> c.isDominant() && c.quality().has(10) && above(c, chroma) == 4)
            .isPresent();
  }

  private static int above(Chord chord, int chroma) {
    return Math.floorMod(chroma - chord.root().chroma(), 12);
  }

  /**
   * A MIDI number as it is written there: as the key's own note, else the chord's or the scale's.
   */
  Pitch spell(int midi) {
    int chroma = Math.floorMod(midi, 12);
    Stream<NoteName> names =
        Stream.concat(chord.stream().flatMap(c -> c.notes().stream()), scale.notes().stream());
    return key.heptatonic().degreeOf(chroma).isPresent()
        ? key.spell(midi)
        : names
            .filter(name -> name.chroma() == chroma)
            .findFirst()
            .map(name -> Pitch.at(key.readable(name), midi))
            .orElseGet(() -> key.spell(midi));
  }

  /**
   * Whether a phrase may stay on it and leap from it: the chord's, the pentatonic's, a blues'
   * sixth.
   */
  boolean rests(int chroma) {
    boolean chosen = inChord(chroma) && (inScale(chroma) || !riff);
    boolean sixth = key.isBlues() && isBlue(chroma) && degree(chroma) == SIXTH && !rubs(chroma);
    return chosen
        || sixth
        || inScale(chroma) && isPentatonic(chroma) && (isSmall() || !rubs(chroma));
  }

  /** What a note costs there; {@link MelodySearch#NEVER} for one that does not belong. */
  double cost(int chroma) {
    if (inChord(chroma) && (inScale(chroma) || !riff)) {
      return inScale(chroma) ? 0 : CHORD_ONLY;
    }
    if (inScale(chroma)) {
      return isPentatonic(chroma) ? SMALL : COLOUR;
    }
    if (isBlue(chroma)) {
      return BLUE;
    }
    boolean added = isSmall() && !riff && key.heptatonic().degreeOf(chroma).isPresent();
    return added && !rubs(chroma) ? OF_THE_KEY : MelodySearch.NEVER;
  }

  /** In a small scale the flat fifth, in a blues also the sixth. */
  private boolean isBlue(int chroma) {
    int degree = degree(chroma);
    return isSmall() && key.isMinor() && (degree == FLAT_FIFTH || key.isBlues() && degree == SIXTH);
  }

  private int degree(int chroma) {
    return Math.floorMod(chroma - key.tonic().chroma(), 12);
  }

  private boolean isSmall() {
    return scale.type().intervals().size() <= FEW;
  }

  private boolean isPentatonic(int chroma) {
    return isSmall() || key.pentatonic().degreeOf(chroma).isPresent();
  }
}

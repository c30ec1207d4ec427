package hingetone.print;

import hingetone.ground.scales.BlueThird;
import hingetone.neck.Dot;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a drawing of a neck shows: a stretch of it and the marks on it.
 *
 * @param strings the names of the open strings, from the highest
 * @param leftHanded whether the nut is on the right
 * @param low the lowest fret shown, 0 for the open strings
 * @param high the highest fret shown
 * @param marks the marks
 */
public record NeckPicture(
    List<String> strings, boolean leftHanded, int low, int high, List<Mark> marks) {

  /**
   * One mark.
   *
   * @param string its string, 1 being the highest
   * @param fret its fret, 0 for the open string
   * @param label what stands there: a scale degree or a note's name as a rule
   * @param meanings what else is to be seen of it
   * @param weight how much it stands out
   */
  public record Mark(int string, int fret, String label, Set<Meaning> meanings, Weight weight) {
    public Mark {
      meanings = Set.copyOf(meanings);
    }

    /** Whether it has a meaning. */
    public boolean is(Meaning meaning) {
      return meanings.contains(meaning);
    }
  }

  /** What a mark says of its note. */
  public enum Meaning {
    /** It is a note of the chord. */
    OF_CHORD,
    /** Both keys at the next crossing have it. */
    STAYS,
    /** It belongs to the shape to come only. */
    COMES,
    /** It stands for the chord's major third and is curled up towards it. */
    CURLED,
    /** The player sounds it. */
    SOUNDS
  }

  /** How much a mark stands out. */
  public enum Weight {
    FAINT,
    PLAIN,
    STRONG
  }

  public NeckPicture {
    strings = List.copyOf(strings);
    marks = List.copyOf(marks);
    if (low < 0 || high < low) {
      throw new IllegalArgumentException("no such stretch of a neck: " + low + " to " + high);
    }
  }

  /**
   * A shape over a chord, marked by degree.
   *
   * @param common pitch classes that both keys at the next crossing have
   */
  public static NeckPicture of(
      Fretboard neck, Shape shape, Optional<Chord> chord, Set<Integer> common) {
    List<String> names =
        IntStream.rangeClosed(1, neck.strings())
            .mapToObj(string -> neck.tuning().string(string).name().simplified().toString())
            .toList();
    Set<Integer> curled =
        chord.flatMap(c -> BlueThird.of(c, shape.scale())).stream()
            .map(NoteName::chroma)
            .collect(Collectors.toSet());
    List<Mark> marks = shape.dots().stream().map(dot -> mark(dot, chord, common, curled)).toList();
    return new NeckPicture(names, neck.leftHanded(), shape.low(), shape.high(), marks);
  }

  private static Mark mark(
      Dot dot, Optional<Chord> chord, Set<Integer> common, Set<Integer> curled) {
    int chroma = dot.pitch().name().chroma();
    Set<Meaning> meanings = EnumSet.noneOf(Meaning.class);
    boolean ofChord = chord.flatMap(c -> c.degreeOf(chroma)).isPresent();
    if (ofChord) {
      meanings.add(Meaning.OF_CHORD);
    }
    if (common.contains(chroma)) {
      meanings.add(Meaning.STAYS);
    }
    if (curled.contains(chroma)) {
      meanings.add(Meaning.CURLED);
    }
    Weight weight = ofChord ? Weight.STRONG : Weight.PLAIN;
    return new Mark(dot.string(), dot.fret(), dot.degree().toString(), meanings, weight);
  }

  Optional<Mark> at(int string, int fret) {
    return marks.stream().filter(m -> m.string() == string && m.fret() == fret).findFirst();
  }
}

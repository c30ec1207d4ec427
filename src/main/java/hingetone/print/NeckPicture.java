package hingetone.print;

import hingetone.neck.Dot;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.theory.Chord;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a drawing of a neck shows: a stretch of it and the marks on it.
 *
 * @param neck the neck
 * @param low the lowest fret shown, 0 for the open strings
 * @param high the highest fret shown
 * @param marks the marks
 */
public record NeckPicture(Fretboard neck, int low, int high, List<Mark> marks) {

  /**
   * One mark.
   *
   * @param spot where
   * @param label what stands there, at most three characters: a scale degree as a rule
   * @param ofChord whether it is a note of the chord
   * @param common whether both keys at the next crossing have it
   */
  public record Mark(Spot spot, String label, boolean ofChord, boolean common) {}

  public NeckPicture {
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
    List<Mark> marks = shape.dots().stream().map(dot -> mark(dot, chord, common)).toList();
    return new NeckPicture(neck, shape.low(), shape.high(), marks);
  }

  private static Mark mark(Dot dot, Optional<Chord> chord, Set<Integer> common) {
    int chroma = dot.pitch().name().chroma();
    boolean ofChord = chord.flatMap(c -> c.degreeOf(chroma)).isPresent();
    return new Mark(dot.spot(), dot.degree().toString(), ofChord, common.contains(chroma));
  }

  Optional<Mark> at(int string, int fret) {
    return marks.stream().filter(m -> m.spot().equals(new Spot(string, fret))).findFirst();
  }
}

package hingetone.ground.ways;

import hingetone.ground.scales.DegreeNames;
import hingetone.ground.scales.ImpliedKey;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.time.Meter;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A bar line with a change of key or a resolution on it, and the hand on either side.
 *
 * @param neck the neck
 * @param meter the meter of the bar before
 * @param before what holds before the line
 * @param after what holds after it
 * @param newShapes every shape of the scale after it
 * @param bends whether strings are bent here rather than not: over a riff or in a blues
 */
public record CrossingLine(
    Fretboard neck, Meter meter, Side before, Side after, List<Shape> newShapes, boolean bends) {

  /**
   * One side of the line.
   *
   * @param key the key
   * @param chord the chord next to the line
   * @param scale the seven-note scale, or the scale over a dominant
   * @param shape the shape under the hand
   */
  public record Side(Key key, Optional<Chord> chord, Scale scale, Shape shape) {

    Hold.Heard heard(NoteName note) {
      return new Hold.Heard(
          DegreeNames.in(key, note),
          chord.map(c -> DegreeNames.over(c, key.spellChroma(note.chroma()))));
    }

    /** Whether a note, 0 to 11 from C, belongs to the scale or to the chord. */
    boolean has(int chroma) {
      return scale.degreeOf(chroma).isPresent() || hasInChord(chroma);
    }

    boolean hasInChord(int chroma) {
      return chord.flatMap(c -> c.degreeOf(chroma)).isPresent();
    }

    /** The scale that the shape is of, as a rule the pentatonic. */
    Scale small() {
      return shape.scale();
    }
  }

  boolean shareNothing() {
    return before.small().commonTones(after.small()).isEmpty();
  }

  /**
   * Frets by which the old scale's notes would have to move to become the new one's, 0 to 11: 2
   * from C minor to D minor, 0 from Eb major to C minor, where shapes stay. Where the two are of
   * different kinds, as far as the tonic moves.
   */
  int shift() {
    Set<Integer> goal = ImpliedKey.chromas(after.small().notes().stream());
    return IntStream.range(0, 12)
        .filter(frets -> goal.equals(moved(frets)))
        .findFirst()
        .orElse(Math.floorMod(after.key().tonic().chroma() - before.key().tonic().chroma(), 12));
  }

  private Set<Integer> moved(int frets) {
    return before.small().notes().stream()
        .map(note -> Math.floorMod(note.chroma() + frets, 12))
        .collect(Collectors.toSet());
  }

  /** Millimetres from the hand to a fret; none where the shape before the line has it. */
  double reach(int fret) {
    int nearest = Math.max(before.shape().low(), Math.min(before.shape().high(), fret));
    return neck.travel(nearest, fret);
  }
}

package hingetone.ground;

import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.time.Meter;
import java.util.List;
import java.util.Optional;

/**
 * A bar line with a change of key or a resolution on it, and the hand on either side.
 *
 * @param neck the neck
 * @param meter the meter of the bar before
 * @param before what holds before the line
 * @param after what holds after it
 * @param newShapes every shape of the scale after it
 */
record Line(Fretboard neck, Meter meter, Side before, Side after, List<Shape> newShapes) {

  /**
   * One side of the line.
   *
   * @param key the key
   * @param chord the chord next to the line
   * @param scale the seven-note scale, or the scale over a dominant
   * @param shape the shape under the hand
   */
  record Side(Key key, Optional<Chord> chord, Scale scale, Shape shape) {

    Hold.Heard heard(NoteName note) {
      return new Hold.Heard(
          Degrees.in(key, note), chord.map(c -> Degrees.over(c, key.spellChroma(note.chroma()))));
    }

    /** The scale that the shape is of, as a rule the pentatonic. */
    Scale small() {
      return shape.scale();
    }
  }

  boolean shareNothing() {
    return before.small().commonTones(after.small()).isEmpty();
  }
}

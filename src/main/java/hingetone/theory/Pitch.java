package hingetone.theory;

import java.util.Optional;

/**
 * A spelled note name in an octave, written in scientific pitch notation: middle C is C4, MIDI 60.
 *
 * <p>The octave goes with the letter, so B#3 sounds like C4 and Cb4 like B3.
 *
 * @param name the spelled name
 * @param octave the octave of the letter
 */
public record Pitch(NoteName name, int octave) {

  /** Reads a whole text such as {@code F#4} or {@code Bb-1}; empty when it is anything else. */
  public static Optional<Pitch> parse(String text) {
    int length = NoteName.prefixLength(text);
    String octave = text.substring(length);
    if (length == 0 || !octave.matches("-?[0-9]{1,2}")) {
      return Optional.empty();
    }
    return NoteName.parse(text.substring(0, length))
        .map(name -> new Pitch(name, Integer.parseInt(octave)));
  }

  /** MIDI note number: 60 for C4. Outside 0 to 127 the pitch has no MIDI note. */
  public int midi() {
    return 12 * (octave + 1) + name.letter().semitones() + name.alteration();
  }

  /** Frequency in hertz, A4 being 440 Hz (ISO 16): 440 · 2^((midi − 69) / 12). */
  public double hertz() {
    return 440 * Math.pow(2, (midi() - 69) / 12.0);
  }

  public boolean soundsLike(Pitch other) {
    return midi() == other.midi();
  }

  /** This pitch moved up by an interval, its spelling following the interval. */
  public Pitch plus(Interval interval) {
    NoteName moved = name.plus(interval);
    return at(moved, midi() + interval.semitones());
  }

  /** This pitch moved down by an interval, its spelling following the interval. */
  public Pitch minus(Interval interval) {
    return plus(interval.negated());
  }

  /** The interval from this pitch to another; negative where the other is lower. */
  public Interval to(Pitch other) {
    int fifths = other.name.fifths() - name.fifths();
    return new Interval(fifths, Math.floorDiv(other.midi() - midi() - 7 * fifths, 12));
  }

  /**
   * The pitch with this name and MIDI number.
   *
   * @throws IllegalArgumentException if the name does not sound like the number
   */
  public static Pitch at(NoteName name, int midi) {
    int inOctaveZero = 12 + name.letter().semitones() + name.alteration();
    if (Math.floorMod(midi - inOctaveZero, 12) != 0) {
      throw new IllegalArgumentException(name + " is not MIDI note " + midi);
    }
    return new Pitch(name, Math.floorDiv(midi - inOctaveZero, 12));
  }

  @Override
  public String toString() {
    return name.toString() + octave;
  }
}

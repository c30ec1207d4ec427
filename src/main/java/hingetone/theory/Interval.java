package hingetone.theory;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A spelled interval, kept as steps on the line of fifths and octaves, so that transposition is
 * addition: a perfect fifth is (1, 0), a minor third (−3, 2).
 *
 * <p>Its text is the scale degree it reaches, as players write it: {@code b3}, {@code #4}, {@code
 * 5}, {@code bb7}, {@code 13}.
 *
 * @param fifths steps on the line of fifths
 * @param octaves octaves added to those steps
 */
public record Interval(int fifths, int octaves) {
  public static final Interval UNISON = new Interval(0, 0);
  public static final Interval MINOR_THIRD = ofFifths(-3);
  public static final Interval MAJOR_THIRD = ofFifths(4);
  public static final Interval FIFTH = ofFifths(1);
  public static final Interval OCTAVE = new Interval(0, 1);

  private static final Pattern DEGREE = Pattern.compile("(-?)(b{0,6}|#{0,6})([1-9]|1[0-5])");
  private static final int[] MAJOR_SCALE_FIFTHS = {0, 2, 4, -1, 1, 3, 5};

  /** The simple interval, unison to seventh, a number of steps along the line of fifths. */
  public static Interval ofFifths(int fifths) {
    return new Interval(fifths, -Math.floorDiv(4 * fifths, 7));
  }

  /**
   * Reads a whole text as a degree: flats or sharps, then a number from 1 to 15. {@code b3} is a
   * minor third, {@code #11} an augmented eleventh, {@code -5} a fifth down. Empty when it is
   * anything else.
   */
  public static Optional<Interval> parse(String degree) {
    Matcher found = DEGREE.matcher(degree);
    if (!found.matches()) {
      return Optional.empty();
    }
    int alteration =
        found.group(2).startsWith("b") ? -found.group(2).length() : found.group(2).length();
    Interval up = ofNumber(Integer.parseInt(found.group(3)), alteration);
    return Optional.of(found.group(1).isEmpty() ? up : up.negated());
  }

  /** The interval of a diatonic number (1 = unison) altered from the major scale's. */
  public static Interval ofNumber(int number, int alteration) {
    int steps = number - 1;
    int fifths = MAJOR_SCALE_FIFTHS[Math.floorMod(steps, 7)] + 7 * alteration;
    return new Interval(fifths, (steps - 4 * fifths) / 7);
  }

  /** Size in semitones; negative for an interval that goes down. */
  public int semitones() {
    return 7 * fifths + 12 * octaves;
  }

  /** Size in staff steps: 0 for a unison, 2 for a third, 7 for an octave. */
  public int steps() {
    return 4 * fifths + 7 * octaves;
  }

  /** Diatonic number: 1 for a unison, 3 for a third, 9 for a ninth. Only for steps of 0 and up. */
  public int number() {
    return steps() + 1;
  }

  /** Semitones above (sharp) or below (flat) the major scale's interval of the same number. */
  public int alteration() {
    return (fifths - MAJOR_SCALE_FIFTHS[Math.floorMod(steps(), 7)]) / 7;
  }

  /** The same interval within one octave: a ninth becomes a second. */
  public Interval simple() {
    return ofFifths(fifths);
  }

  public Interval plus(Interval other) {
    return new Interval(fifths + other.fifths, octaves + other.octaves);
  }

  public Interval minus(Interval other) {
    return plus(other.negated());
  }

  public Interval negated() {
    return new Interval(-fifths, -octaves);
  }

  /** The degree as text: {@code b3}, {@code #4}; with a leading minus for a downward interval. */
  @Override
  public String toString() {
    if (steps() < 0) {
      return "-" + negated();
    }
    int alteration = alteration();
    return (alteration < 0 ? "b".repeat(-alteration) : "#".repeat(alteration)) + number();
  }
}

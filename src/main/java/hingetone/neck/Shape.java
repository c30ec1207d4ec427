package hingetone.neck;

import hingetone.theory.Interval;
import hingetone.theory.Scale;
import java.util.List;
import java.util.Optional;

/**
 * A scale under one hand: consecutive notes of the scale from the lowest string to the highest,
 * none missed, none doubled. It is named by the degree it starts on.
 *
 * @param scale the scale
 * @param layout how the notes are shared out over the strings
 * @param strings the dots of each string, ascending, from the lowest string to the highest
 */
public record Shape(Scale scale, Layout layout, List<List<Dot>> strings) {
  /** Frets that four fingers cover. */
  public static final int HAND = 4;

  /** How the notes are shared out over the strings. */
  public enum Layout {
    /** The same number on each string: two of a pentatonic, three of a seven-note scale. */
    EVEN,
    /** As many on each string as lie under a hand that stays where it is. */
    POSITION
  }

  /** How far the hand must stretch on one string. */
  public enum Stretch {
    /** Four frets at most: one finger a fret. */
    NONE,
    /** Five frets on some string. */
    WIDE,
    /** More: the tuning allows nothing better. */
    TOO_WIDE
  }

  public Shape {
    strings = strings.stream().map(List::copyOf).toList();
  }

  /** The degree of its lowest note, which names it: {@code b3}. */
  public Interval start() {
    return lowest().degree();
  }

  /** Its lowest note. */
  public Dot lowest() {
    return strings.stream().filter(s -> !s.isEmpty()).findFirst().orElseThrow().get(0);
  }

  /** Its lowest fret. */
  public int low() {
    return dots().stream().mapToInt(Dot::fret).min().orElseThrow();
  }

  /** Its highest fret. */
  public int high() {
    return dots().stream().mapToInt(Dot::fret).max().orElseThrow();
  }

  /** All dots from the lowest string to the highest. */
  public List<Dot> dots() {
    return strings.stream().flatMap(List::stream).toList();
  }

  /** How many dots it has. */
  public int size() {
    return strings.stream().mapToInt(List::size).sum();
  }

  /** The dot at a place, when the shape has one there. */
  public Optional<Dot> at(Spot spot) {
    return dots().stream().filter(d -> d.spot().equals(spot)).findFirst();
  }

  /** The widest stretch on one string. */
  public Stretch stretch() {
    int widest = strings.stream().mapToInt(Shape::width).max().orElse(0);
    return widest <= HAND ? Stretch.NONE : widest == HAND + 1 ? Stretch.WIDE : Stretch.TOO_WIDE;
  }

  /** Frets covered on one string, the outer ones included; 0 for an empty string. */
  private static int width(List<Dot> string) {
    return string.isEmpty() ? 0 : string.get(string.size() - 1).fret() - string.get(0).fret() + 1;
  }

  /** Whether a fret lies under the hand, or a stretch of one fret beside it. */
  public boolean inReach(int fret) {
    return fret >= low() - 1 && fret <= high() + 1;
  }

  /** Whether two shapes have a fret in common. */
  public boolean overlaps(Shape other) {
    return low() <= other.high() && other.low() <= high();
  }
}

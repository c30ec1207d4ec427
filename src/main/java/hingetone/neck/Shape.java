package hingetone.neck;

import hingetone.theory.Interval;
import hingetone.theory.Scale;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A scale under one hand: consecutive notes of the scale from the lowest string to the highest,
 * none doubled, none missed but in a {@link Stretch#BROKEN broken} one. It is named by the degree
 * it starts on.
 *
 * @param scale the scale
 * @param layout how the notes are shared out over the strings
 * @param strings the dots of each string, ascending, from the lowest string to the highest
 */
public record Shape(Scale scale, Layout layout, List<List<Dot>> strings) {
  /** Frets that four fingers cover. */
  public static final int HAND = 4;

  /** Frets from a string to the next that a small shift of the hand still covers. */
  static final int WITH_A_SHIFT = 6;

  /** How the notes are shared out over the strings. */
  public enum Layout {
    /** The same number on each string: two of a pentatonic, three of a seven-note scale. */
    EVEN,
    /** As many on each string as lie under a hand that stays where it is. */
    POSITION
  }

  /** How far the hand must stretch. */
  public enum Stretch {
    /** Four frets at most: one finger a fret. */
    NONE,
    /** Five frets on some string. */
    WIDE,
    /**
     * More, a jump from a string to the next, or a string left out: the tuning allows no better.
     */
    TOO_WIDE,
    /** The frets above the capo lack some of its notes: the neck is too short for the tuning. */
    BROKEN
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
    return ends(string -> string.get(0)).min().orElseThrow();
  }

  /** Its highest fret. */
  public int high() {
    return ends(string -> string.get(string.size() - 1)).max().orElseThrow();
  }

  private IntStream ends(Function<List<Dot>, Dot> end) {
    return strings.stream().filter(s -> !s.isEmpty()).map(end).mapToInt(Dot::fret);
  }

  /** All dots from the lowest string to the highest. */
  public List<Dot> dots() {
    return strings.stream().flatMap(List::stream).toList();
  }

  /** How many dots it has. */
  public int size() {
    return strings.stream().mapToInt(List::size).sum();
  }

  /** The widest stretch, on one string or from a string to the next as the scale climbs. */
  public Stretch stretch() {
    if (lacksNotes()) {
      return Stretch.BROKEN;
    }
    List<List<Dot>> climbing =
        strings.stream()
            .filter(string -> !string.isEmpty())
            .sorted(Comparator.comparing(string -> string.get(0).pitch().midi()))
            .toList();
    int onOne = climbing.stream().mapToInt(Shape::width).max().orElse(0);
    int onTwo = 0;
    for (int i = 1; i < climbing.size(); i++) {
      onTwo = Math.max(onTwo, width(climbing.get(i - 1), climbing.get(i)));
    }
    boolean leavesOneOut = climbing.size() < strings.size();
    if (leavesOneOut || onOne > HAND + 1 || onTwo > WITH_A_SHIFT) {
      return Stretch.TOO_WIDE;
    }
    return onOne > HAND ? Stretch.WIDE : Stretch.NONE;
  }

  private boolean lacksNotes() {
    int[] notes = dots().stream().mapToInt(dot -> dot.pitch().midi()).sorted().toArray();
    return IntStream.range(notes[0], notes[notes.length - 1])
        .filter(midi -> scale.degreeOf(Math.floorMod(midi, 12)).isPresent())
        .anyMatch(midi -> Arrays.binarySearch(notes, midi) < 0);
  }

  /** Frets covered on two strings together. */
  private static int width(List<Dot> one, List<Dot> other) {
    int low = Math.min(one.get(0).fret(), other.get(0).fret());
    int high = Math.max(one.get(one.size() - 1).fret(), other.get(other.size() - 1).fret());
    return high - low + 1;
  }

  /** Frets covered on one string, the outer ones included. */
  private static int width(List<Dot> string) {
    return width(string, string);
  }

  /** Whether two shapes have a fret in common. */
  public boolean overlaps(Shape other) {
    return low() <= other.high() && other.low() <= high();
  }
}

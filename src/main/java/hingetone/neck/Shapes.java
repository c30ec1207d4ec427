package hingetone.neck;

import hingetone.neck.Shape.Layout;
import hingetone.theory.Interval;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Every shape of a scale on a neck, computed from the tuning.
 *
 * <p>From each place on the lowest string where a degree of the scale lies, consecutive notes of
 * the scale are shared out over the strings in the way that costs the hand least ({@link
 * StringAssignment}).
 */
public final class Shapes {
  private static final int OCTAVE = 12;

  private final Fretboard fretboard;
  private final Scale scale;

  /** Notes on each string anywhere on the neck, by the layout and the first fret in its octave. */
  private final Map<Layout, int[][]> sharedOut = new EnumMap<>(Layout.class);

  private Shapes(Fretboard fretboard, Scale scale) {
    this.fretboard = fretboard;
    this.scale = scale;
  }

  /**
   * All shapes that lie wholly on the neck, up the neck, even ones before those in one position;
   * where both come out the same it is there once. For C minor pentatonic in standard tuning: the
   * five shapes of the handbooks, once more an octave up as far as the neck goes. Where the frets
   * above a capo hold no shape on all strings: one with what they do hold, its gaps marked. Never
   * empty, and no dot off the neck.
   */
  public static List<Shape> of(Fretboard fretboard, Scale scale) {
    Shapes shapes = new Shapes(fretboard, scale);
    List<Shape> whole =
        needed(shapes.shared(StringAssignment.ANYWHERE)).stream().filter(shapes::fits).toList();
    if (!whole.isEmpty()) {
      return whole;
    }
    List<Shape> squeezed =
        shapes.shared(fretboard.lastFret()).stream().filter(shapes::fits).toList();
    Shape reachable = shapes.reachable();
    boolean holdMore = squeezed.stream().anyMatch(s -> s.size() >= reachable.size());
    return holdMore ? needed(squeezed) : List.of(reachable);
  }

  private boolean fits(Shape shape) {
    return shape.low() >= 0 && shape.high() <= fretboard.lastFret();
  }

  /** A shape of each layout from each place on the lowest string. */
  private List<Shape> shared(int lastFret) {
    List<Shape> found = new ArrayList<>();
    int lowest = byPitch().get(0);
    for (int fret = 0; fret <= fretboard.lastFret(); fret++) {
      if (degreeOf(fretboard.open(lowest) + fret) != null) {
        for (Layout layout : layouts()) {
          add(found, layout, fret, lastFret);
        }
      }
    }
    return found;
  }

  private static List<Shape> needed(List<Shape> found) {
    return found.stream()
        .filter(shape -> found.stream().noneMatch(other -> isBetter(other, shape)))
        .sorted(Comparator.comparing(Shape::layout).thenComparing(s -> s.lowest().fret()))
        .toList();
  }

  /** Every note of the scale that the frets hold, on the lowest string that has it. */
  private Shape reachable() {
    List<List<Dot>> strings =
        new ArrayList<>(Collections.nCopies(fretboard.strings(), List.<Dot>of()));
    int highest = -1;
    for (int string : byPitch()) {
      int open = fretboard.open(string);
      List<Dot> dots =
          IntStream.rangeClosed(Math.max(open, highest + 1), open + fretboard.lastFret())
              .filter(midi -> degreeOf(midi) != null)
              .mapToObj(midi -> dot(string, midi))
              .toList();
      strings.set(fretboard.strings() - string, dots);
      highest = dots.isEmpty() ? highest : dots.get(dots.size() - 1).pitch().midi();
    }
    return new Shape(scale, Layout.POSITION, strings);
  }

  /** Whether a shape makes another needless: it holds all of it, or needs no such stretch. */
  private static boolean isBetter(Shape one, Shape other) {
    boolean holdsAll =
        one.layout() == other.layout()
            && one.size() > other.size()
            && one.dots().containsAll(other.dots());
    return holdsAll
        || (one.start().equals(other.start())
            && other.stretch() == Shape.Stretch.TOO_WIDE
            && one.stretch() != Shape.Stretch.TOO_WIDE);
  }

  /** A position always; an even shape where a fourth holds a whole number of the scale's notes. */
  private List<Layout> layouts() {
    double onAString = StringAssignment.onAString(scale.type().intervals().size());
    boolean even = Math.abs(onAString - Math.round(onAString)) < 0.1;
    return even ? List.of(Layout.EVEN, Layout.POSITION) : List.of(Layout.POSITION);
  }

  private void add(List<Shape> found, Layout layout, int startFret, int lastFret) {
    List<Integer> order = byPitch();
    int[] open = order.stream().mapToInt(fretboard::open).toArray();
    int[] notes = notesFrom(open[0] + startFret, open.length * StringAssignment.MOST_ON_A_STRING);
    List<List<Dot>> strings =
        new ArrayList<>(Collections.nCopies(fretboard.strings(), List.<Dot>of()));
    int[] counts = counts(layout, startFret, open, notes, lastFret);
    int next = 0;
    for (int i = 0; i < counts.length; i++) {
      int string = order.get(i);
      int from = next;
      next += counts[i];
      List<Dot> dots = IntStream.range(from, next).mapToObj(n -> dot(string, notes[n])).toList();
      strings.set(fretboard.strings() - string, dots);
    }
    Shape shape = new Shape(scale, layout, strings);
    if (found.stream().noneMatch(s -> s.strings().equals(shape.strings()))) {
      found.add(shape);
    }
  }

  /** Where no end of the neck is heeded, an octave up the strings take as many notes as here. */
  private int[] counts(Layout layout, int startFret, int[] open, int[] notes, int lastFret) {
    int scaleSize = scale.type().intervals().size();
    if (lastFret != StringAssignment.ANYWHERE) {
      return StringAssignment.best(layout, open, notes, scaleSize, lastFret);
    }
    int[][] known = sharedOut.computeIfAbsent(layout, l -> new int[OCTAVE][]);
    int place = startFret % OCTAVE;
    if (known[place] == null) {
      known[place] = StringAssignment.best(layout, open, notes, scaleSize, lastFret);
    }
    return known[place];
  }

  /** Players' numbers of the strings from the lowest sounding to the highest. */
  private List<Integer> byPitch() {
    return fretboard.fromLowest().stream().sorted(Comparator.comparing(fretboard::open)).toList();
  }

  private int[] notesFrom(int midi, int count) {
    return IntStream.iterate(midi, n -> n + 1)
        .filter(n -> degreeOf(n) != null)
        .limit(count)
        .toArray();
  }

  private Dot dot(int string, int midi) {
    Interval degree = degreeOf(midi);
    Spot spot = new Spot(string, midi - fretboard.open(string));
    return new Dot(spot, degree, Pitch.at(scale.tonic().plus(degree), midi));
  }

  private Interval degreeOf(int midi) {
    return scale.degreeOf(Math.floorMod(midi, 12)).orElse(null);
  }
}

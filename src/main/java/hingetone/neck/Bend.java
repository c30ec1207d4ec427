package hingetone.neck;

import hingetone.theory.Interval;
import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A string pushed aside so that its note rises to another note of the scale; heard backwards it is
 * the release.
 *
 * @param size how far
 * @param from the fretted note
 * @param to the note it reaches; for a curl the fretted note itself, which it leaves by a quarter
 *     tone
 * @param toDegree the scale's degree that it reaches
 */
public record Bend(Size size, Dot from, Pitch to, Interval toDegree) {

  /**
   * How far a bend goes and where players bend that far: the number of strings, counted from the
   * highest, and the lowest fret. Common practice on strings of usual gauge, from memory.
   */
  public enum Size {
    CURL(50, 6, 1),
    HALF(100, 4, 2),
    WHOLE(200, 3, 3),
    TONE_AND_A_HALF(300, 2, 7);

    /** B flat 2: a guitar's A string and a bass's highest are lower, what a guitar bends is not. */
    private static final int THICK_BELOW = 46;

    private static final List<Size> USUAL_FIRST =
        Stream.of(values())
            .filter(size -> size.semitones() > 0)
            .sorted(Comparator.comparingInt(size -> Math.abs(size.cents - WHOLE.cents)))
            .toList();

    private final int cents;
    private final int strings;
    private final int lowestFret;

    Size(int cents, int strings, int lowestFret) {
      this.cents = cents;
      this.strings = strings;
      this.lowestFret = lowestFret;
    }

    /** Its size in hundredths of a semitone: 50, 100, 200 or 300. */
    public int cents() {
      return cents;
    }

    /** Its size in whole semitones: 0 for a curl. */
    public int semitones() {
      return cents / 100;
    }

    /**
     * The sizes that reach another note, the nearest to a whole tone first: that is how far most
     * bends go. Common practice.
     */
    public static List<Size> usualFirst() {
      return USUAL_FIRST;
    }

    /** The size of so many semitones; empty for one that nobody bends. */
    public static Optional<Size> of(int semitones) {
      return USUAL_FIRST.stream().filter(size -> size.semitones() == semitones).findFirst();
    }

    /**
     * Whether players bend that far at a place. A string of a bass is too thick for more than a
     * half tone.
     *
     * @param midi the note fretted there
     */
    public boolean isPlayableAt(Spot spot, int midi) {
      boolean thick = midi - spot.fret() < THICK_BELOW;
      return spot.string() <= strings
          && spot.fret() >= lowestFret
          && !(thick && cents > HALF.cents);
    }
  }

  /** The note that a release brings back; empty for a curl, which is let go unheard. */
  public Optional<Pitch> release() {
    return size == Size.CURL ? Optional.empty() : Optional.of(from.pitch());
  }

  /**
   * Every bend inside a shape: from a dot to a note of the scale a half, a whole or one and a half
   * tones above, and curls on the minor third. In C minor pentatonic string 1 fret 13 goes from F5
   * to G5.
   */
  public static List<Bend> all(Shape shape) {
    List<Bend> bends = new ArrayList<>();
    for (Dot dot : shape.dots()) {
      for (Size size : Size.values()) {
        if (size.isPlayableAt(dot.spot(), dot.pitch().midi())) {
          add(bends, shape, dot, size);
        }
      }
    }
    return List.copyOf(bends);
  }

  private static void add(List<Bend> bends, Shape shape, Dot dot, Size size) {
    if (size == Size.CURL) {
      if (dot.degree().equals(Interval.MINOR_THIRD)) {
        bends.add(new Bend(size, dot, dot.pitch(), dot.degree()));
      }
      return;
    }
    int reached = dot.pitch().midi() + size.semitones();
    shape
        .scale()
        .degreeOf(Math.floorMod(reached, 12))
        .ifPresent(
            degree -> {
              Pitch to = Pitch.at(shape.scale().tonic().plus(degree), reached);
              bends.add(new Bend(size, dot, to, degree));
            });
  }
}

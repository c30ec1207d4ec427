package hingetone.neck;

import hingetone.theory.Interval;
import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A string pushed aside so that its note rises to another note of the scale; heard backwards it is
 * the release.
 *
 * @param kind how far
 * @param from the fretted note
 * @param to the note it reaches; for a curl the fretted note itself, which it leaves by a quarter
 *     tone
 * @param toDegree the scale's degree that it reaches
 */
public record Bend(Kind kind, Dot from, Pitch to, Interval toDegree) {

  /**
   * How far a bend goes and where players bend that far: the number of strings, counted from the
   * highest, and the lowest fret. Common practice on strings of usual gauge, from memory.
   */
  public enum Kind {
    CURL(50, 6, 1),
    HALF(100, 4, 2),
    WHOLE(200, 3, 3),
    TONE_AND_A_HALF(300, 2, 7);

    private final int cents;
    private final int strings;
    private final int lowestFret;

    Kind(int cents, int strings, int lowestFret) {
      this.cents = cents;
      this.strings = strings;
      this.lowestFret = lowestFret;
    }

    /** Its size in hundredths of a semitone: 50, 100, 200 or 300. */
    public int cents() {
      return cents;
    }

    /** Whether players bend that far at this place. */
    public boolean isPlayableAt(Spot spot) {
      return spot.string() <= strings && spot.fret() >= lowestFret;
    }
  }

  /** Its size in whole semitones: 0 for a curl. */
  public int semitones() {
    return kind.cents / 100;
  }

  /** The note that a release brings back; empty for a curl, which is let go unheard. */
  public Optional<Pitch> release() {
    return kind == Kind.CURL ? Optional.empty() : Optional.of(from.pitch());
  }

  /**
   * Every bend inside a shape: from a dot to a note of the scale a half, a whole or one and a half
   * tones above, and curls on the minor third. In C minor pentatonic string 1 fret 13 goes from F5
   * to G5.
   */
  public static List<Bend> all(Shape shape) {
    List<Bend> bends = new ArrayList<>();
    for (Dot dot : shape.dots()) {
      for (Kind kind : Kind.values()) {
        if (kind.isPlayableAt(dot.spot())) {
          add(bends, shape, dot, kind);
        }
      }
    }
    return List.copyOf(bends);
  }

  private static void add(List<Bend> bends, Shape shape, Dot dot, Kind kind) {
    if (kind == Kind.CURL) {
      if (dot.degree().equals(Interval.MINOR_THIRD)) {
        bends.add(new Bend(kind, dot, dot.pitch(), dot.degree()));
      }
      return;
    }
    int reached = dot.pitch().midi() + kind.cents / 100;
    shape
        .scale()
        .degreeOf(Math.floorMod(reached, 12))
        .ifPresent(
            degree -> {
              Pitch to = Pitch.at(shape.scale().tonic().plus(degree), reached);
              bends.add(new Bend(kind, dot, to, degree));
            });
  }
}

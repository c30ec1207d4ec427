package hingetone.neck;

import hingetone.theory.Pitch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A neck as it is played: its tuning, a capo, its length and the player's hand.
 *
 * <p>Frets are counted from the capo: fret 0 is the string as it rings with the capo on.
 *
 * @param tuning the open strings without the capo
 * @param capo the fret of the capo, 0 for none
 * @param frets frets on the instrument, counted from the nut, up to {@value #MOST_FRETS}
 * @param leftHanded whether it is strung, and drawn, for a left-handed player
 */
public record Fretboard(Tuning tuning, int capo, int frets, boolean leftHanded) {
  public static final int MOST_FRETS = 27;

  /** Frets that must be left above a capo for a shape to lie there. */
  public static final int FEWEST_FREE = 5;

  /** Frets of a common electric guitar. */
  public static final int USUAL_FRETS = 22;

  /** Length of a common electric guitar's open string in millimetres (25½ inches). */
  public static final double USUAL_SCALE_LENGTH = 648;

  public Fretboard {
    if (frets > MOST_FRETS || capo < 0 || frets - capo < FEWEST_FREE) {
      throw new IllegalArgumentException("no such neck: " + frets + " frets, capo " + capo);
    }
  }

  /** A right-handed neck of 22 frets. */
  public static Fretboard of(Tuning tuning, int capo) {
    return new Fretboard(tuning, capo, USUAL_FRETS, false);
  }

  public int strings() {
    return tuning.strings().size();
  }

  /** The highest fret, counted from the capo. */
  public int lastFret() {
    return frets - capo;
  }

  public boolean has(Spot spot) {
    return spot.string() >= 1
        && spot.string() <= strings()
        && spot.fret() >= 0
        && spot.fret() <= lastFret();
  }

  /** MIDI number of the note that sounds at a place; the place may lie beyond the neck's end. */
  public int midi(Spot spot) {
    return open(spot.string()) + spot.fret();
  }

  /** MIDI number of a string as it rings open, the capo on; string 1 is the highest. */
  public int open(int string) {
    return tuning.string(string).midi() + capo;
  }

  /** Every place where a note can be played, from the highest string to the lowest. */
  public List<Spot> spotsOf(Pitch pitch) {
    List<Spot> spots = new ArrayList<>();
    for (int string = 1; string <= strings(); string++) {
      Spot spot = new Spot(string, pitch.midi() - open(string));
      if (has(spot)) {
        spots.add(spot);
      }
    }
    return spots;
  }

  /**
   * The note nearest to a MIDI number that can be played: the same note in any octave before
   * another.
   */
  public int nearest(int midi) {
    return IntStream.rangeClosed(1, strings())
        .flatMap(string -> IntStream.rangeClosed(open(string), open(string) + lastFret()))
        .boxed()
        .min(
            Comparator.comparing((Integer note) -> Math.floorMod(note - midi, 12) != 0)
                .thenComparing(note -> Math.abs(note - midi)))
        .orElseThrow();
  }

  /**
   * How far the hand travels from one fret to another in millimetres, on an open string of {@value
   * #USUAL_SCALE_LENGTH} mm.
   */
  public double travel(int fromFret, int toFret) {
    return Math.abs(
        distanceFromNut(capo + toFret, USUAL_SCALE_LENGTH)
            - distanceFromNut(capo + fromFret, USUAL_SCALE_LENGTH));
  }

  /**
   * Where a fret lies, in the unit of the string's length: L · (1 − 2^(−n/12)), the equal-tempered
   * division of the string. Fret 12 halves it.
   */
  public static double distanceFromNut(int fret, double scaleLength) {
    return scaleLength * (1 - Math.pow(2, -fret / 12.0));
  }

  /** The players' numbers of the strings from the lowest to the highest: 6, 5, … 1. */
  List<Integer> fromLowest() {
    return IntStream.iterate(strings(), s -> s >= 1, s -> s - 1).boxed().toList();
  }
}

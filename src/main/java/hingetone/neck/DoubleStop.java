package hingetone.neck;

import hingetone.theory.Interval;
import java.util.ArrayList;
import java.util.List;

/**
 * Two notes of a shape struck together.
 *
 * @param low the lower note
 * @param high the higher note
 */
public record DoubleStop(Dot low, Dot high) {
  private static final int NARROWEST = 3;
  private static final int WIDEST = 12;

  /** The interval between the two: {@code b3}, {@code 4}, {@code 6}. */
  public Interval interval() {
    return low.pitch().to(high.pitch());
  }

  /**
   * Every double stop inside a shape: on neighbouring strings, or on strings with one between them
   * (sixths and wider), under one hand, from a minor third to an octave.
   */
  public static List<DoubleStop> all(Shape shape) {
    List<DoubleStop> stops = new ArrayList<>();
    for (Dot low : shape.dots()) {
      for (Dot high : shape.dots()) {
        int strings = low.string() - high.string();
        int semitones = high.pitch().midi() - low.pitch().midi();
        boolean sizeFits = semitones >= (strings == 2 ? 8 : NARROWEST) && semitones <= WIDEST;
        boolean underOneHand = Math.abs(low.fret() - high.fret()) < Shape.HAND;
        if ((strings == 1 || strings == 2) && sizeFits && underOneHand) {
          stops.add(new DoubleStop(low, high));
        }
      }
    }
    return List.copyOf(stops);
  }
}

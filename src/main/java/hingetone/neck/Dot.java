package hingetone.neck;

import hingetone.theory.Interval;
import hingetone.theory.Pitch;

/**
 * A note of a scale where it lies on the neck.
 *
 * @param spot where
 * @param degree which degree of the scale it is
 * @param pitch how it sounds, spelled as the scale spells it
 */
public record Dot(Spot spot, Interval degree, Pitch pitch) {
  public int string() {
    return spot.string();
  }

  public int fret() {
    return spot.fret();
  }
}

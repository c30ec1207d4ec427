package hingetone.neck;

/**
 * A place on the neck.
 *
 * @param string the string as players number it, 1 being the last of the tuning's list, which is
 *     the highest as a rule
 * @param fret the fret, counted from the nut or the capo; 0 is the open string
 */
public record Spot(int string, int fret) {

  /** The same string, frets further up (or down, when negative). */
  public Spot up(int frets) {
    return new Spot(string, fret + frets);
  }

  @Override
  public String toString() {
    return "string " + string + " fret " + fret;
  }
}

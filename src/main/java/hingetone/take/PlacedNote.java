package hingetone.take;

/**
 * A note in musical time.
 *
 * @param at where it is struck, in quarter notes from bar 1
 * @param end where it ends, in quarter notes from bar 1
 * @param struck MIDI number, with fractions, of the pitch it begins with
 * @param reached that of the pitch it counts as: the one it is bent to
 * @param velocity MIDI velocity, 1 to 127
 */
public record PlacedNote(double at, double end, double struck, double reached, int velocity) {
  /** MIDI number of the pitch it counts as. */
  public int pitch() {
    return (int) Math.round(reached);
  }

  /** The pitch class of that, 0 to 11. */
  public int chroma() {
    return Math.floorMod(pitch(), 12);
  }

  public double length() {
    return end - at;
  }
}

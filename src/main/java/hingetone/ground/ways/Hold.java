package hingetone.ground.ways;

import hingetone.neck.Bend;
import hingetone.neck.Spot;
import hingetone.theory.Interval;
import hingetone.theory.Pitch;
import java.util.Optional;

/**
 * One note held over a line, and how it is heard on either side.
 *
 * @param note the note before the line, spelled in the key before
 * @param spot where it is played
 * @param noteAfter what sounds after the line, spelled in the key after; the same sound unless it
 *     moves
 * @param move what happens on the line
 * @param before what it is before the line
 * @param after what it is after the line
 * @param bend a bend from it whose upper end may be held across as well
 * @param bentFirst whether that end is held rather than the note itself
 * @param score how well it does, 0 to 1
 * @param travel millimetres the hand travels to it from the shape before
 * @param afterwards what to do with it after the line, a sentence
 */
public record Hold(
    Pitch note,
    Spot spot,
    Pitch noteAfter,
    Move move,
    Heard before,
    Heard after,
    Optional<BentHold> bend,
    boolean bentFirst,
    double score,
    double travel,
    String afterwards) {

  /** What rings after the line: the bend's upper end, or the note where it stays or moves to. */
  public Pitch ringing() {
    return bentFirst ? bend.orElseThrow().to() : noteAfter;
  }

  /** What a held note does on the line. */
  public enum Move {
    /** It rings on. */
    STAY,
    /** It is bent up a half tone, because the keys share nothing. */
    BEND,
    /** It is slid a half tone, because the keys share nothing. */
    SLIDE
  }

  /**
   * What a note is on one side of the line.
   *
   * @param degree its degree in the key
   * @param overChord what it is over the chord, {@code 11}; empty where there is no chord
   */
  public record Heard(Interval degree, Optional<String> overChord) {}

  /**
   * The upper end of a bend that belongs to both keys, like the note it starts from.
   *
   * @param size how far
   * @param to the note it reaches
   * @param before what that is before the line
   * @param after what that is after the line
   */
  public record BentHold(Bend.Size size, Pitch to, Heard before, Heard after) {}
}

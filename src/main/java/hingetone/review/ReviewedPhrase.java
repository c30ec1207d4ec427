package hingetone.review;

import hingetone.time.Position;
import java.util.Optional;

/**
 * A phrase and what was understood of it.
 *
 * @param index its number, from 1
 * @param span its notes
 * @param start where it begins
 * @param end where its last note ends
 * @param role what it does
 * @param roleConfidence how sure that is, 0 to 1
 * @param repliesTo the index of the phrase it answers; empty for all but replies, and for a reply
 *     that a teacher marks before any statement
 * @param pickupBeats how many beats it begins before its landing
 * @param landing its main note; empty where it has none
 * @param returns what comes back in it; empty where nothing does
 * @param remark what a teacher remarks on it
 */
public record ReviewedPhrase(
    int index,
    PhraseFinder.Span span,
    Position start,
    Position end,
    Role role,
    double roleConfidence,
    Optional<Integer> repliesTo,
    double pickupBeats,
    Optional<Landing> landing,
    Optional<Return> returns,
    Optional<String> remark) {
  /** What a phrase does. */
  public enum Role {
    STATEMENT,
    REPLY,
    OTHER
  }

  /**
   * The main note.
   *
   * @param at the place it belongs to, to the half beat
   * @param pitch MIDI number of the pitch it counts as
   * @param offsetMs how much later it was struck, in milliseconds
   */
  public record Landing(Position at, int pitch, double offsetMs) {}

  /**
   * An earlier phrase coming back.
   *
   * @param of that phrase's index
   * @param semitones how far it is moved, octaves included
   * @param shiftBeats how much later in its bar it begins, in beats
   * @param openingNotes how many notes of the opening are the same
   * @param sameEnding whether the rest is the same too
   * @param confidence how sure it is, 0 to 1
   */
  public record Return(
      int of,
      int semitones,
      double shiftBeats,
      int openingNotes,
      boolean sameEnding,
      double confidence) {}
}

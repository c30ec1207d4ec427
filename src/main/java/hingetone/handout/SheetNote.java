package hingetone.handout;

import hingetone.neck.Spot;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;

/**
 * A note as it is written, wherever it comes from.
 *
 * @param start where it starts, in quarter notes from bar 1
 * @param end where it ends
 * @param pitch the note that is fretted, spelled
 * @param spot where it is played, where that is known
 * @param bends how its string is bent, in order
 * @param joined how it is reached from the note before, where it is not picked
 * @param graced the note it slides from, where that is none before it
 * @param vibrato whether its pitch swings
 */
record SheetNote(
    Beats start,
    Beats end,
    Pitch pitch,
    Optional<Spot> spot,
    List<Bend> bends,
    Optional<Joint> joined,
    Optional<Grace> graced,
    boolean vibrato) {

  /** How one note leads to the next on a string that is picked once. */
  enum Joint {
    HAMMER_ON,
    PULL_OFF,
    SLIDE
  }

  /** Which way a string is bent. */
  enum Way {
    UP,
    BEFORE,
    RELEASE
  }

  /**
   * A bend.
   *
   * @param semitones how far, above 0
   * @param way whether up, up before it is struck, or back
   */
  record Bend(double semitones, Way way) {}

  /** A note too short to be counted, from which another begins. */
  record Grace(Pitch pitch, Optional<Spot> spot) {}

  SheetNote {
    bends = List.copyOf(bends);
  }

  /** A picked note, perhaps bent. */
  static SheetNote picked(Beats start, Beats end, Pitch pitch, Spot spot, List<Bend> bends) {
    return new SheetNote(
        start, end, pitch, Optional.of(spot), bends, Optional.empty(), Optional.empty(), false);
  }
}

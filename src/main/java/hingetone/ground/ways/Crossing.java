package hingetone.ground.ways;

import hingetone.theory.Key;
import java.util.List;

/**
 * A change of key and the ways over it, each list with the best first.
 *
 * @param atBar the first bar in the new key; at the seam between laps the form's length + 1
 * @param from the key before
 * @param to the key after
 * @param commonTones what the two keys share
 * @param holds one note left ringing
 * @param runs busy ways
 * @param stays shapes of the new key under the hand
 */
public record Crossing(
    int atBar,
    Key from,
    Key to,
    CommonTones commonTones,
    List<Hold> holds,
    List<Run> runs,
    List<Stay> stays) {
  public Crossing {
    holds = List.copyOf(holds);
    runs = List.copyOf(runs);
    stays = List.copyOf(stays);
  }

  /** Semitones from the old tonic to the new by the shorter way, −5 to 6. */
  public int semitones() {
    return Math.floorMod(to.tonic().chroma() - from.tonic().chroma() + 5, 12) - 5;
  }

  /** The same crossing in another lap. */
  public Crossing atBar(int bar) {
    return new Crossing(bar, from, to, commonTones, holds, runs, stays);
  }
}

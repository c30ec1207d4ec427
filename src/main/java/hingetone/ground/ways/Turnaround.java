package hingetone.ground.ways;

import hingetone.ground.scales.FittingScale;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import java.util.List;

/**
 * The dominant at the end of a section that leads back to a tonic, and the ways over it.
 *
 * @param atBar the bar in which the tonic comes; at the seam between laps the form's length + 1
 * @param bars bars that the dominant fills before it, at least 1
 * @param dominant the chord
 * @param to the key whose tonic it leads to
 * @param scales what fits over it, the best first
 * @param holds one note left ringing
 * @param runs busy ways
 * @param stays shapes of the key under the hand
 */
public record Turnaround(
    int atBar,
    int bars,
    Chord dominant,
    Key to,
    List<FittingScale> scales,
    List<Hold> holds,
    List<Run> runs,
    List<Stay> stays) {
  public Turnaround {
    scales = List.copyOf(scales);
    holds = List.copyOf(holds);
    runs = List.copyOf(runs);
    stays = List.copyOf(stays);
  }
}

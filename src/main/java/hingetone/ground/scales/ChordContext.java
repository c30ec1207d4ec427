package hingetone.ground.scales;

import hingetone.theory.Chord;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A chord in its place: everything the choice of scales depends on.
 *
 * @param chord the chord; empty for no chord
 * @param pulls whether it is a dominant, of the chord after it or in its own key
 * @param function what it does, where that names its scale
 * @param homes the keys it is heard in, the strongest first
 * @param neighbours pitch classes of the chords before and after it
 * @param overRiff whether its section stands on a riff or on power chords, so that the tonic's
 *     pentatonic goes through all of it
 */
public record ChordContext(
    Optional<Chord> chord,
    boolean pulls,
    Optional<ChordFunction> function,
    List<ImpliedKey> homes,
    Set<Integer> neighbours,
    boolean overRiff) {
  public ChordContext {
    homes = List.copyOf(homes);
    neighbours = Set.copyOf(neighbours);
  }
}

package hingetone.ground.ways;

import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import java.util.List;
import java.util.Optional;

/**
 * What two keys share, spelled as the first key spells it and in its order.
 *
 * @param pentatonic notes of both keys' five-note scales
 * @param scale notes of both keys' seven-note scales
 * @param chords notes of both chords at the line; empty where there is no chord
 */
public record CommonTones(List<NoteName> pentatonic, List<NoteName> scale, List<NoteName> chords) {
  public CommonTones {
    pentatonic = List.copyOf(pentatonic);
    scale = List.copyOf(scale);
    chords = List.copyOf(chords);
  }

  public static CommonTones of(Key from, Key to, Optional<Chord> before, Optional<Chord> after) {
    return new CommonTones(
        from.pentatonic().commonTones(to.pentatonic()),
        from.heptatonic().commonTones(to.heptatonic()),
        before.isPresent() && after.isPresent()
            ? before.get().notes().stream()
                .filter(n -> after.get().degreeOf(n.chroma()).isPresent())
                .map(n -> from.spellChroma(n.chroma()))
                .toList()
            : List.of());
  }
}

package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A key that a chord is heard in, and how strongly.
 *
 * @param key the key
 * @param weight how strongly, the weights of all homes of a chord adding up to 1
 * @param role what the chord is to it
 */
public record ImpliedKey(Key key, double weight, Role role) {

  /** What a chord is to a key that it is heard in. */
  public enum Role {
    /** It belongs to the section's key. */
    OWN,
    /** It resolves to this key's tonic, as a dominant or its tritone substitute. */
    DOMINANT,
    /** It prepares the dominant of this key: the second degree before it. */
    PREPARING,
    /** It is borrowed from this mode on the section's tonic. */
    BORROWED,
    /** It ends a section and belongs to the next one's key. */
    LEADING,
    /** It is nearly all there is: its root is felt as a tonic. */
    RIFF
  }

  /**
   * The key's notes as pitch classes, bent to a chord: each chord tone that is not in the key takes
   * the place of the key's note on the same letter, the tone spelled as players of the key would,
   * whatever the symbol says. In C minor, G7 gives the harmonic minor, F7 the Dorian mode; in C
   * major, Bb7 gives Bb with a raised fourth. In a blues key major and minor stand side by side,
   * until a chord has the minor third and not the major one.
   */
  static Set<Integer> field(Key key, List<NoteName> chordTones) {
    if (key.isBlues()) {
      return blues(key, chordTones);
    }
    Set<Integer> sounding = chromas(chordTones.stream());
    List<NoteName> notes = new ArrayList<>(key.heptatonic().notes());
    for (NoteName named : chordTones) {
      NoteName tone = key.tonic().plus(key.degreeOf(named.chroma()));
      if (notes.stream().noneMatch(tone::soundsLike)) {
        notes.removeIf(n -> n.letter() == tone.letter() && !sounding.contains(n.chroma()));
        notes.add(tone);
      }
    }
    return chromas(notes.stream());
  }

  private static Set<Integer> blues(Key key, List<NoteName> chordTones) {
    Stream<NoteName> notes =
        Stream.of("1", "2", "b3", "3", "4", "5", "6", "b7")
            .map(degree -> key.tonic().plus(Interval.parse(degree).orElseThrow()));
    Set<Integer> field = chromas(Stream.concat(notes, chordTones.stream()));
    NoteName third = key.tonic().plus(Interval.MAJOR_THIRD);
    boolean has = chordTones.stream().anyMatch(third::soundsLike);
    if (!has && chordTones.stream().anyMatch(key.tonic().plus(Interval.MINOR_THIRD)::soundsLike)) {
      field.remove(third.chroma());
    }
    return field;
  }

  public static Set<Integer> chromas(Stream<NoteName> notes) {
    return notes.map(NoteName::chroma).collect(Collectors.toCollection(TreeSet::new));
  }

  /**
   * The mode on a key's tonic, with a fifth to rest on, that has a whole chord and differs least
   * from the key: for Bb in C major the mixolydian, for Fm the minor. Empty where the key has the
   * chord, or no mode does.
   */
  static Optional<Key> lending(Key key, Chord chord) {
    if (belonging(key, chord) == 1) {
      return Optional.empty();
    }
    Scale own = key.heptatonic();
    return Key.MODES.stream()
        .filter(mode -> mode.intervals().size() == own.type().intervals().size())
        .filter(mode -> mode.intervals().contains(Interval.FIFTH))
        .map(mode -> new Key(key.tonic(), mode))
        .filter(other -> chord.notes().stream().allMatch(other.scale()::contains))
        .max(Comparator.comparingInt(other -> own.commonTones(other.scale()).size()));
  }

  /** How much of a chord is in the key, 0 to 1; the leading note counts as a minor key's own. */
  static double belonging(Key key, Chord chord) {
    Set<Integer> field = field(key, List.of());
    field.add(key.tonic().minus(Interval.ofNumber(2, -1)).chroma());
    List<NoteName> notes = chord.notes();
    long inside = notes.stream().filter(n -> field.contains(n.chroma())).count();
    return (double) inside / notes.size();
  }
}

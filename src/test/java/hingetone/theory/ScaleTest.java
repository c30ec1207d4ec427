package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScaleTest {
  @ParameterizedTest
  @CsvSource({
    "C# minor pentatonic, C# E F# G# B",
    "Bb minor pentatonic, Bb Db Eb F Ab",
    "G blues, G Bb C Db D F",
    "F# harmonic minor, F# G# A B C# D E#",
    "Eb melodic minor, Eb F Gb Ab Bb C D",
    "G altered, G Ab A# B C# Eb F",
    "C whole tone, C D E F# G# A#",
    "E phrygian dominant, E F G# A B C D",
    "Bb lydian, Bb C D E F G A",
    "C half-whole diminished, C Db Eb E F# G A Bb"
  })
  void a_scale_is_spelled_as_a_musician_writes_it(String scale, String notes) {
    assertThat(Scale.parse(scale).orElseThrow().notes()).isEqualTo(Spellings.names(notes));
  }

  @ParameterizedTest
  @CsvSource({
    "c minor, C minor",
    "C  Natural   Minor, C minor",
    "F♯ Super Locrian, F# altered",
    "Bb pentatonic minor, Bb minor pentatonic",
    "C locrian ♯2, C locrian #2",
    "D aeolian, D minor",
    "E jazz minor, E melodic minor"
  })
  void aliases_case_and_spacing_are_free(String text, String name) {
    assertThat(Scale.parse(text).orElseThrow()).hasToString(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "C", "C ", "Cminor", "minor", "H minor", "C minr", "C### minor", " C minor"})
  void anything_else_is_no_scale(String text) {
    assertThat(Scale.parse(text)).isEmpty();
  }

  @Test
  void no_name_means_two_scales_and_each_is_read_back() {
    Set<String> seen = new HashSet<>();
    for (ScaleType type : ScaleType.ALL) {
      for (String name : Stream.concat(Stream.of(type.name()), type.aliases().stream()).toList()) {
        assertThat(seen.add(name)).as(name).isTrue();
        assertThat(ScaleType.parse(name)).contains(type);
      }
    }
    for (NoteName tonic : Spellings.NAMES) {
      for (ScaleType type : ScaleType.ALL) {
        Scale scale = new Scale(tonic, type);
        assertThat(Scale.parse(scale.toString())).contains(scale);
      }
    }
  }

  @Test
  void every_scale_ascends_from_its_tonic_within_an_octave() {
    for (ScaleType type : ScaleType.ALL) {
      List<Integer> semitones = type.intervals().stream().map(Interval::semitones).toList();

      assertThat(semitones).as(type.name()).isSorted().doesNotHaveDuplicates().startsWith(0);
      assertThat(semitones.get(semitones.size() - 1)).isLessThan(12);
      assertThat(type.intervals().stream().map(i -> i.alteration()))
          .allMatch(a -> a >= -2 && a < 2);
    }
  }

  /** The modes by their place in the parent scale: common practice, computed by rotating. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ':',
      textBlock =
          """
          major         : major, dorian, phrygian, lydian, mixolydian, minor, locrian
          melodic minor : melodic minor, dorian b2, lydian augmented, lydian dominant, mixolydian b6, locrian #2
          harmonic minor: harmonic minor, locrian #6, major augmented, dorian #4, phrygian dominant, lydian #2, ultralocrian
          """)
  void the_modes_are_rotations_of_their_parent(String parent, String modes) {
    Scale scale = new Scale(Spellings.name("C"), ScaleType.named(parent.strip()));
    String[] names = modes.strip().split(", ");
    for (int place = 0; place < names.length; place++) {
      List<NoteName> rotated = new ArrayList<>(scale.notes());
      Collections.rotate(rotated, -place);

      assertThat(new Scale(rotated.get(0), ScaleType.named(names[place])).notes())
          .as(names[place])
          .isEqualTo(rotated);
    }
  }

  /** The altered scale is the seventh mode of the melodic minor, three of its notes respelled. */
  @Test
  void the_altered_scale_sounds_like_the_melodic_minor_a_half_step_up() {
    Scale altered = Scale.parse("B altered").orElseThrow();
    Scale melodic = Scale.parse("C melodic minor").orElseThrow();

    assertThat(altered.notes()).allMatch(melodic::contains);
    assertThat(altered.commonTones(melodic)).hasSize(7);
  }

  /**
   * How many notes a scale shares with itself shifted by 0 to 11 semitones: the common-tone theorem
   * of set theory, its values computed outside this project.
   */
  @ParameterizedTest
  @CsvSource({
    "major, 7 2 5 4 3 6 2 6 3 4 5 2",
    "harmonic minor, 7 3 3 5 4 4 4 4 4 5 3 3",
    "minor pentatonic, 5 0 3 2 1 4 0 4 1 2 3 0"
  })
  void a_scale_shares_its_notes_with_its_shifts(String type, String counts) {
    for (NoteName tonic : Spellings.NAMES) {
      Scale scale = new Scale(tonic, ScaleType.named(type));
      List<String> shared =
          IntStream.range(0, 12)
              .mapToObj(shift -> scale.plus(Interval.ofFifths(Math.floorMod(7 * shift, 12))))
              .map(shifted -> "" + scale.commonTones(shifted).size())
              .toList();

      assertThat(String.join(" ", shared)).as(scale.toString()).isEqualTo(counts);
    }
  }

  @Test
  void common_tones_come_in_the_order_and_the_spelling_of_the_scale_that_is_asked() {
    Scale low = Scale.parse("G minor pentatonic").orElseThrow();
    Scale high = Scale.parse("Bb minor pentatonic").orElseThrow();
    Scale same = Scale.parse("A# minor pentatonic").orElseThrow();

    assertThat(low.commonTones(high)).isEqualTo(Spellings.names("Bb F"));
    assertThat(high.commonTones(low)).isEqualTo(Spellings.names("Bb F"));
    assertThat(same.commonTones(low)).isEqualTo(Spellings.names("A# E#"));
    for (NoteName one : Spellings.NAMES) {
      for (NoteName other : Spellings.NAMES) {
        Scale from = new Scale(one, low.type());
        Scale to = new Scale(other, low.type());
        Set<Integer> shared = chromas(from.notes());
        shared.retainAll(chromas(to.notes()));
        assertThat(chromas(from.commonTones(to))).as("%s, %s", from, to).isEqualTo(shared);
      }
    }
  }

  private static Set<Integer> chromas(List<NoteName> notes) {
    return notes.stream().map(NoteName::chroma).collect(Collectors.toCollection(HashSet::new));
  }

  @Test
  void moving_a_scale_moves_each_of_its_notes() {
    for (Interval interval : Spellings.INTERVALS) {
      for (ScaleType type : ScaleType.ALL) {
        Scale scale = new Scale(Spellings.name("D"), type);

        assertThat(scale.plus(interval).notes())
            .isEqualTo(scale.notes().stream().map(n -> n.plus(interval)).toList());
      }
    }
  }

  @Test
  void a_degree_is_found_by_its_sound() {
    for (ScaleType type : ScaleType.ALL) {
      Scale scale = new Scale(Spellings.name("F#"), type);
      for (Interval degree : type.intervals()) {
        assertThat(scale.degreeOf(scale.tonic().plus(degree).chroma())).contains(degree);
      }
      long inside = IntStream.range(0, 12).filter(c -> scale.degreeOf(c).isPresent()).count();
      assertThat(inside).isEqualTo(type.intervals().size());
    }
  }
}

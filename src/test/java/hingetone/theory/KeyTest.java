package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KeyTest {
  private static final List<String> MODES =
      List.of("lydian", "major", "mixolydian", "dorian", "minor", "phrygian", "locrian");

  /** Key signatures from seven flats to seven sharps, as in every theory primer. */
  @ParameterizedTest
  @CsvSource({
    "major, Cb Gb Db Ab Eb Bb F C G D A E B F# C#",
    "minor, Ab Eb Bb F C G D A E B F# C# G# D# A#"
  })
  void the_circle_of_fifths_gives_the_signatures(String mode, String tonics) {
    List<NoteName> names = Spellings.names(tonics);
    for (int i = 0; i < 15; i++) {
      assertThat(new Key(names.get(i), ScaleType.named(mode)).signature()).isEqualTo(i - 7);
    }
  }

  /** In 15 signatures, seven modes each: the notes are the signature's, F C G D A E B sharp. */
  @Test
  void the_notes_of_a_key_are_those_of_its_signature() {
    for (int signature = -7; signature <= 7; signature++) {
      List<NoteName> notes =
          IntStream.range(signature - 1, signature + 6).mapToObj(NoteName::ofFifths).toList();
      for (int mode = 0; mode < MODES.size(); mode++) {
        Key key = new Key(notes.get(mode), ScaleType.named(MODES.get(mode)));

        assertThat(key.signature()).as(key.toString()).isEqualTo(signature);
        assertThat(key.heptatonic().notes()).containsExactlyInAnyOrderElementsOf(notes);
        assertThat(notes.stream().filter(n -> n.alteration() != 0)).hasSize(Math.abs(signature));
        assertThat(key.simplified()).isEqualTo(key);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "E dorian,2",
    "A blues,0",
    "G blues,-2",
    "D mixolydian,1",
    "B locrian,0",
    "F lydian,0"
  })
  void a_modes_signature_is_that_of_its_notes(String key, int signature) {
    assertThat(key(key).signature()).isEqualTo(signature);
  }

  @Test
  void every_midi_note_gets_a_name_that_sounds_and_has_two_accidentals_at_most() {
    for (NoteName tonic : IntStream.rangeClosed(-8, 12).mapToObj(NoteName::ofFifths).toList()) {
      for (ScaleType mode : Key.MODES) {
        Key key = new Key(tonic, mode);
        if (Math.abs(key.signature()) <= 7) {
          for (int midi = 0; midi < 128; midi++) {
            Pitch pitch = key.spell(midi);
            assertThat(pitch.midi()).isEqualTo(midi);
            assertThat(pitch.name().alteration()).as(pitch + " in " + key).isBetween(-2, 2);
          }
          assertThat(IntStream.range(0, 12).mapToObj(key::spellChroma))
              .containsAll(key.scale().notes());
        }
      }
    }
  }

  /** Common practice: flat thirds and sevenths, leading notes raised, the blue fifth flat. */
  @ParameterizedTest
  @CsvSource({
    "D minor, C C# D Eb E F F# G Ab A Bb B",
    "G blues, C Db D Eb E F F# G Ab A Bb B",
    "Bb minor, C Db D Eb Fb F Gb G Ab A Bb Cb",
    "F# minor, C C# D D# E E# F# G G# A A# B",
    "G# minor, B# C# D D# E E# F# G G# A A# B",
    "C major, C Db D Eb E F F# G Ab A Bb B",
    "E major, C C# D D# E F F# G G# A A# B",
    "Eb major, C Db D Eb Fb F Gb G Ab A Bb Cb",
    "G minor, C Db D Eb E F F# G Ab A Bb B",
    "D dorian, C C# D Eb E F F# G Ab A Bb B",
    "B locrian, C C# D D# E F F# G G# A A# B"
  })
  void a_key_names_all_twelve_notes(String key, String names) {
    assertThat(IntStream.range(0, 12).mapToObj(key(key)::spellChroma).toList())
        .isEqualTo(Spellings.names(names));
  }

  /** The degrees do not depend on how the tonic is spelled. */
  @ParameterizedTest
  @CsvSource({
    "minor, 1 b2 2 b3 3 4 b5 5 b6 6 b7 7",
    "blues, 1 b2 2 b3 3 4 b5 5 b6 6 b7 7",
    "dorian, 1 b2 2 b3 3 4 b5 5 b6 6 b7 7",
    "locrian, 1 b2 2 b3 3 4 b5 5 b6 6 b7 7",
    "major, 1 b2 2 b3 3 4 #4 5 b6 6 b7 7",
    "lydian, 1 b2 2 b3 3 4 #4 5 b6 6 b7 7",
    "mixolydian, 1 b2 2 b3 3 4 #4 5 b6 6 b7 7"
  })
  void every_note_is_a_degree_of_the_key(String mode, String degrees) {
    for (NoteName tonic : Spellings.NAMES) {
      Key key = new Key(tonic, ScaleType.named(mode));
      List<String> found =
          IntStream.range(0, 12)
              .mapToObj(i -> key.degreeOf((tonic.chroma() + i) % 12).toString())
              .toList();
      assertThat(String.join(" ", found)).as(key.toString()).isEqualTo(degrees);
    }
  }

  @Test
  void a_shifted_key_has_the_fewest_sharps_or_flats() {
    for (NoteName tonic : Spellings.NAMES) {
      for (ScaleType mode : Key.MODES) {
        Key key = new Key(tonic, mode);
        for (int semitones = -24; semitones <= 24; semitones++) {
          Key shifted = key.shifted(semitones);

          assertThat(shifted.tonic().chroma())
              .isEqualTo(Math.floorMod(tonic.chroma() + semitones, 12));
          assertThat(shifted.mode()).isEqualTo(mode);
          if (semitones % 12 == 0) {
            assertThat(shifted).isEqualTo(key);
          } else {
            assertThat(shifted.signature()).as(key + " by " + semitones).isBetween(-6, 6);
          }
        }
        assertThat(key.simplified().tonic().soundsLike(tonic)).isTrue();
        assertThat(key.simplified().signature()).isBetween(-7, 7);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "G minor,3,Bb minor", "A minor,1,Bb minor", "A minor,-1,G# minor", "E minor,-1,D# minor",
    "G minor,-4,Eb minor", "E major,2,F# major", "F major,1,Gb major", "C major,6,Gb major",
    "F# major,0,F# major", "C# major,12,C# major", "G blues,3,Bb blues", "D dorian,-2,C dorian"
  })
  void keys_are_shifted_as_players_name_them(String key, int semitones, String shifted) {
    assertThat(key(key).shifted(semitones)).hasToString(shifted);
  }

  @ParameterizedTest
  @CsvSource({
    "C minor, C minor pentatonic",
    "C major, C major pentatonic",
    "G blues, G minor pentatonic",
    "D dorian, D minor pentatonic",
    "G mixolydian, G major pentatonic",
    "B locrian, B locrian pentatonic"
  })
  void a_key_has_a_first_choice_of_five_notes(String key, String scale) {
    assertThat(key(key).pentatonic()).hasToString(scale);
    assertThat(key(key).heptatonic().notes()).containsAll(key(key).pentatonic().notes());
  }

  @Test
  void every_key_reads_back_as_it_prints() {
    for (NoteName tonic : Spellings.NAMES) {
      for (ScaleType mode : Key.MODES) {
        Key key = new Key(tonic, mode);
        assertThat(Key.parse(key.toString())).contains(key);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"c minor,C minor", "F♯ Dorian,F# dorian", "C ionian,C major", "e aeolian,E minor"})
  void case_signs_and_mode_names_are_free(String text, String key) {
    assertThat(key(text)).hasToString(key);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "C", "Cm", "Cminor", "C altered", "minor", "C minor pentatonic", "H minor"})
  void anything_else_is_no_key(String text) {
    assertThat(Key.parse(text)).isEmpty();
  }

  @Test
  void other_scales_make_no_key() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Key(Spellings.name("A"), ScaleType.named("altered")))
        .withMessage("not the scale of a key: altered");
  }

  private static Key key(String text) {
    return Key.parse(text.strip()).orElseThrow();
  }

  /** As signatures have it: Gb major has a C flat, F# major an E sharp (common practice). */
  @Test
  void people_read_a_keys_own_notes_as_the_key_spells_them_and_others_simply() {
    assertThat(readable("Gb major", "Cb")).isEqualTo("Cb");
    assertThat(readable("F# major", "E#")).isEqualTo("E#");
    assertThat(readable("C major", "Cb")).isEqualTo("B");
    assertThat(readable("F major", "E#")).isEqualTo("F");
    assertThat(readable("C# minor", "B#")).isEqualTo("C");
    assertThat(readable("G# minor", "F##")).isEqualTo("G");
  }

  private static String readable(String key, String note) {
    NoteName name = NoteName.parse(note).orElseThrow();
    return Key.parse(key).orElseThrow().readable(name).toString();
  }
}

package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NoteNameTest {
  @Test
  void every_name_reads_back_as_it_prints() {
    assertThat(Spellings.NAMES).hasSize(35);
    for (NoteName name : Spellings.NAMES) {
      assertThat(NoteName.parse(name.toString())).contains(name);
      assertThat(NoteName.ofFifths(name.fifths())).isEqualTo(name);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "c,C", "bb,Bb", "b,B", "F♯,F#", "E♭,Eb", "Gx,G##", "Gb♭,Gbb", "F𝄪,F##", "B𝄫,Bbb", "C#♯,C##"
  })
  void signs_and_small_letters_are_read(String text, String name) {
    assertThat(NoteName.parse(text)).hasValueSatisfying(n -> assertThat(n).hasToString(name));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "H", "h", "#", "C###", "Cbbb", "Cxx", "C#b", "Cb#", "C 4", "C4", " C", "é", "Ｃ"
      })
  void anything_else_is_no_name(String text) {
    assertThat(NoteName.parse(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"C###,3", "F#m7,2", "Bbb7,3", "Cb#,2", "Cx#,2", "Dm,1", "x,0", "F𝄪x,3"})
  void the_longest_name_at_the_start_is_found(String text, int length) {
    assertThat(NoteName.prefixLength(text)).isEqualTo(length);
  }

  @ParameterizedTest
  @CsvSource({
    "F##,G", "E#,F", "B#,C", "Cb,B", "Fb,E", "Bbb,A", "C##,D", "A#,A#", "Bb,Bb", "G#,G#", "Gb,Gb",
    "Ebb,D", "Fbb,Eb", "B##,C#", "E##,F#", "Cbb,Bb", "C,C"
  })
  void people_read_the_simplest_name(String strict, String simple) {
    assertThat(Spellings.name(strict).simplified()).hasToString(simple);
  }

  @Test
  void a_simplified_name_sounds_the_same_and_has_one_accidental_at_most() {
    for (int fifths = -60; fifths <= 60; fifths++) {
      NoteName name = NoteName.ofFifths(fifths);
      NoteName simple = name.simplified();

      assertThat(simple.soundsLike(name)).isTrue();
      assertThat(simple.alteration()).isBetween(-1, 1);
      assertThat(simple.simplified()).isEqualTo(simple);
      assertThat(simple).as(simple + " for " + name).isNotIn(Spellings.names("E# B# Cb Fb"));
    }
  }
}

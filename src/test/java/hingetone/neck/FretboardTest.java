package hingetone.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hingetone.theory.Pitch;
import java.util.List;
import org.junit.jupiter.api.Test;

class FretboardTest {
  @Test
  void standard_tuning_has_the_frequencies_of_the_handbooks() {
    // E2 to E4 as in the reference file; equal temperament on A4 = 440 Hz (ISO 16).
    double[] hertz = {82.41, 110, 146.83, 196, 246.94, 329.63};
    for (int i = 0; i < hertz.length; i++) {
      assertThat(Tuning.STANDARD.strings().get(i).hertz()).isCloseTo(hertz[i], within(0.005));
    }
  }

  @Test
  void the_named_tunings_are_those_of_the_handbooks() {
    // Low to high, as in the reference file.
    assertThat(notes("drop d")).isEqualTo("[D2, A2, D3, G3, B3, E4]");
    assertThat(notes("open g")).isEqualTo("[D2, G2, D3, G3, B3, D4]");
    assertThat(notes("d a d g a d")).isEqualTo("[D2, A2, D3, G3, A3, D4]");
    assertThat(notes("open d")).isEqualTo("[D2, A2, D3, F#3, A3, D4]");
    assertThat(notes("open e")).isEqualTo("[E2, B2, E3, G#3, B3, E4]");
  }

  @Test
  void the_nearest_note_is_the_same_in_an_octave_the_neck_has_else_the_next_one() {
    Fretboard three = Fretboard.of(Tuning.parse("D2 D2 D2").orElseThrow(), 12);
    // Frets 0 to 10 from the capo: D3 (50) to C4 (60), without a C#.
    assertThat(three.nearest(55)).isEqualTo(55);
    assertThat(three.nearest(69)).isEqualTo(57);
    assertThat(three.nearest(38)).isEqualTo(50);
    assertThat(three.nearest(49)).isEqualTo(50);
    assertThat(three.nearest(61)).isEqualTo(60);
  }

  private static String notes(String name) {
    return Tuning.parse(name).orElseThrow().strings().toString();
  }

  @Test
  void a_list_of_notes_without_octaves_rises_string_by_string_near_a_guitar() {
    assertThat(notes("C G D G B E")).isEqualTo("[C2, G2, D3, G3, B3, E4]");
    assertThat(notes("B E A D G B E")).isEqualTo("[B1, E2, A2, D3, G3, B3, E4]");
  }

  @Test
  void what_is_no_list_of_3_to_12_notes_is_no_tuning() {
    for (String text : List.of("", "E", "E A", "E A H", "E2 A D", "standart", "E2 A2 D999")) {
      assertThat(Tuning.parse(text)).as(text).isEmpty();
    }
  }

  @Test
  void frets_lie_where_the_equal_division_of_the_string_puts_them() {
    // d = L (1 - 2^(-n/12)) with L = 648 mm, the values of the reference file.
    assertThat(Fretboard.distanceFromNut(1, 648)).isCloseTo(36.369, within(0.001));
    assertThat(Fretboard.distanceFromNut(5, 648)).isCloseTo(162.549, within(0.001));
    assertThat(Fretboard.distanceFromNut(7, 648)).isCloseTo(215.512, within(0.001));
    assertThat(Fretboard.distanceFromNut(12, 648)).isCloseTo(324.000, within(0.001));
  }

  @Test
  void frets_count_from_the_capo() {
    Fretboard neck = new Fretboard(Tuning.STANDARD, 2, 22, false);
    assertThat(neck.midi(new Spot(6, 0))).isEqualTo(Pitch.parse("F#2").orElseThrow().midi());
    assertThat(neck.lastFret()).isEqualTo(20);
  }

  @Test
  void a_neck_has_up_to_27_frets() {
    assertThat(new Fretboard(Tuning.STANDARD, 0, 27, true).has(new Spot(1, 27))).isTrue();
    assertThatThrownBy(() -> new Fretboard(Tuning.STANDARD, 0, 28, false))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

package hingetone.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PitchTest {
  @Test
  void every_pitch_reads_back_as_it_prints() {
    for (Pitch pitch : Spellings.PITCHES) {
      assertThat(Pitch.parse(pitch.toString())).contains(pitch);
      assertThat(Pitch.at(pitch.name(), pitch.midi())).isEqualTo(pitch);
    }
  }

  /** Scientific pitch: middle C is C4, MIDI note 60; the octave goes with the letter. */
  @ParameterizedTest
  @CsvSource({"C4,60", "A4,69", "C-1,0", "G9,127", "B#3,60", "Cb4,59", "Ebb5,74", "E2,40"})
  void a_pitch_has_its_midi_number(String pitch, int midi) {
    assertThat(Pitch.parse(pitch).orElseThrow().midi()).isEqualTo(midi);
  }

  /** Standard guitar tuning in hertz at A4 = 440 Hz (ISO 16), as handbooks print it. */
  @ParameterizedTest
  @CsvSource({"E2,82.41", "A2,110", "D3,146.83", "G3,196", "B3,246.94", "E4,329.63", "A4,440"})
  void the_open_strings_have_their_frequencies(String pitch, double hertz) {
    assertThat(Pitch.parse(pitch).orElseThrow().hertz()).isCloseTo(hertz, within(0.005));
  }

  /** MIDI number = 69 + 12 · log2(f / 440 Hz), solved for every note. */
  @Test
  void the_frequency_gives_the_midi_number_back() {
    for (Pitch pitch : Spellings.PITCHES) {
      double midi = 69 + 12 * Math.log(pitch.hertz() / 440) / Math.log(2);
      assertThat(midi).isCloseTo(pitch.midi(), within(1e-9));
    }
  }

  @Test
  void a_name_must_sound_like_the_number_it_is_given() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Pitch.at(Spellings.name("C#"), 60))
        .withMessage("C# is not MIDI note 60");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "4", "C", "C#", "H4", "C4.", "C--1", "C100", "C+4", "C４", "C###4"})
  void anything_else_is_no_pitch(String text) {
    assertThat(Pitch.parse(text)).isEmpty();
  }
}

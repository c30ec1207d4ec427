package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.SoundFont.Preset;
import hingetone.sound.TinySoundFont.Zone;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SoundFontTest {
  private static final TinySoundFont BAND =
      TinySoundFont.of(
          Zone.of(0, 33).keys(28, 60).velocities(1, 100),
          Zone.of(0, 27),
          Zone.of(128, 0).keys(35, 51));

  @TempDir Path folder;

  private Path file(byte[] bytes) throws IOException {
    return Files.write(folder.resolve("bank.sf2"), bytes);
  }

  private static SoundFont font(TinySoundFont font) throws Exception {
    return new SoundFont(MidiSystem.getSoundbank(new ByteArrayInputStream(font.bytes())));
  }

  /** The JDK's synthesizer is a second opinion; {@link HeardKeys} takes it. */
  @Test
  void a_key_is_said_to_sound_where_the_jdks_synthesizer_plays_it() throws Exception {
    Path file = file(BAND.bytes());
    for (Preset preset : List.of(new Preset(0, 33), new Preset(0, 27), new Preset(128, 0))) {
      assertThat(HeardKeys.disagreements(file, preset, 0, 27, 28, 34, 35, 51, 52, 60, 61, 127))
          .as(preset.toString())
          .isEmpty();
    }
    SoundFont font = font(BAND);
    assertThat(font.sounds(new Preset(0, 33), 28, 100)).isTrue();
    assertThat(font.sounds(new Preset(0, 33), 27, 100)).isFalse();
    assertThat(font.sounds(new Preset(0, 33), 28, 101)).isFalse();
    assertThat(font.sounds(new Preset(0, 34), 40, 90)).isFalse();
  }

  @Test
  void a_file_cut_off_anywhere_is_refused() throws Exception {
    byte[] whole = BAND.bytes();
    for (int length = 0; length < whole.length; length += length < 200 ? 1 : 97) {
      Path file = file(Arrays.copyOf(whole, length));
      assertThatThrownBy(() -> SoundBank.read(file))
          .as(length + " bytes")
          .isInstanceOf(SoundFailure.class);
    }
    Path half = file(Arrays.copyOf(whole, 3000));
    assertThatThrownBy(() -> SoundBank.read(half))
        .hasMessage(
            half
                + String.format(
                    java.util.Locale.ROOT,
                    " is cut off: 3,000 of its %,d bytes are there; copy or download it again.",
                    whole.length));
  }

  @Test
  void a_bank_without_instruments_is_refused() throws Exception {
    Path file = file(TinySoundFont.of().bytes());
    assertThatThrownBy(() -> SoundBank.read(file))
        .hasMessage(file + " holds no instruments; give another bank (.sf2).");
  }

  @Test
  void compressed_samples_are_refused_whatever_the_files_ending() throws Exception {
    for (TinySoundFont font : List.of(BAND.version(3), BAND.sampleType(0x11))) {
      Path file = file(font.bytes());
      assertThatThrownBy(() -> SoundBank.read(file))
          .hasMessage(
              file
                  + " has compressed samples (SF3), which cannot be played:"
                  + " give the bank as a SoundFont 2 (.sf2).");
    }
  }

  /** The JDK's synthesizer would hang over it, and the band with it. */
  @Test
  void a_preset_with_a_loop_of_no_length_is_as_good_as_not_there() throws Exception {
    SoundFont font = font(BAND.loop(49, 49));
    assertThat(font.sounds(new Preset(0, 27))).isFalse();
    assertThat(font.instrument(new Preset(0, 27))).isEmpty();
    assertThat(font(BAND.loop(49, 98)).instrument(new Preset(0, 27))).isPresent();
  }

  /** At one frame a second the synthesizer divides by zero over low keys. */
  @Test
  void a_note_that_breaks_the_synthesizer_is_dropped_and_the_next_is_heard() throws Exception {
    Path file = file(BAND.sampleRate(1).bytes());
    float[] stereo = new float[2 * 6000];
    try (Synthesizer synthesizer = Synthesizer.open(22_050, SoundBank.read(file))) {
      synthesizer.prepare(List.of(new Part(Role.CHORDS, Sound.of(27), List.of())));
      synthesizer.send(MidiEvents.message(ShortMessage.PROGRAM_CHANGE, 2, 27, 0), 0);
      synthesizer.send(MidiEvents.message(ShortMessage.NOTE_ON, 2, 30, 100), 0);
      synthesizer.send(MidiEvents.message(ShortMessage.NOTE_ON, 2, 127, 100), 3000);
      synthesizer.read(stereo, 6000);
    }
    // From Java 25 on the synthesizer keeps its filters from falling asleep with 1e-20.
    for (int i = 0; i < 2 * 3000; i++) {
      assertThat(stereo[i]).isCloseTo(0, within(1e-9f));
    }
    assertThat(stereo[2 * 5999]).isNotZero();
  }

  @Test
  void a_sample_that_is_silent_does_not_sound() throws Exception {
    assertThat(font(BAND.peak(10)).sounds(new Preset(0, 27), 60, 90)).isFalse();
    assertThat(font(BAND).sounds(new Preset(0, 27), 60, 90)).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ''             | is empty; copy or download it again.
          RIFF....DLS    | is a DLS bank, which cannot be played: give a SoundFont 2 (.sf2).
          RIFF....WAVE   | is not a sound font that can be read; give a General MIDI bank (.sf2).
          A text.        | is not a sound font that can be read; give a General MIDI bank (.sf2).
          PK..           | is packed: unpack it and give the .sf2 in it.
          """)
  void a_file_of_another_kind_is_told(String start, String words) throws Exception {
    Path file = Files.writeString(folder.resolve("other.sf2"), start.replace("DLS", "DLS "));
    assertThatThrownBy(() -> SoundBank.read(file)).hasMessage(file + " " + words);
  }

  @Test
  void what_is_no_file_is_not_opened() throws Exception {
    Path missing = folder.resolve("missing.sf2");
    assertThatThrownBy(() -> SoundBank.read(missing))
        .hasMessage("Cannot read the sound font " + missing + ": there is no such file.");
    assertThatThrownBy(() -> SoundBank.read(folder))
        .hasMessage("Cannot read the sound font " + folder + ": it is no file.");
  }
}

package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiEvents;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.time.Beats;
import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class BuiltInSoundsTest {
  private static SoundBank bank;

  @BeforeAll
  static void readTheBankOnce() throws SoundFailure {
    bank = SoundBank.builtIn();
  }

  /** General MIDI level 1 names keys 35 to 81 (MIDI Manufacturers Association RP-003). */
  @Test
  void every_drum_of_general_midi_is_heard() throws Exception {
    for (int key = 27; key <= 87; key++) {
      assertThat(peak(Role.DRUMS, 0, key)).as("drum " + key).isGreaterThan(0.005);
    }
  }

  @Test
  void every_program_the_band_may_use_is_heard() throws Exception {
    for (int program = 0; program < 112; program++) {
      assertThat(peak(Role.CHORDS, program, 60)).as("program " + program).isGreaterThan(0.01);
    }
  }

  @Test
  void a_ride_is_played_on_the_hat_and_its_note_off_follows() {
    ShortMessage on = BuiltInSounds.adapt(MidiEvents.message(ShortMessage.NOTE_ON, 9, 51, 80));
    ShortMessage off = BuiltInSounds.adapt(MidiEvents.message(ShortMessage.NOTE_OFF, 9, 51, 0));
    assertThat(List.of(on.getData1(), on.getData2(), off.getData1())).containsExactly(42, 80, 42);
  }

  @Test
  void a_melody_and_the_kits_controllers_pass_unchanged() {
    ShortMessage melody = MidiEvents.message(ShortMessage.NOTE_ON, 2, 51, 80);
    ShortMessage expression = MidiEvents.message(ShortMessage.CONTROL_CHANGE, 9, 11, 51);
    assertThat(BuiltInSounds.adapt(melody)).isSameAs(melody);
    assertThat(BuiltInSounds.adapt(expression)).isSameAs(expression);
  }

  private static double peak(Role role, int program, int key) throws SoundFailure, IOException {
    Note note = new Note(Beats.ZERO, Beats.ONE, key, 90);
    Part part = new Part(role, Sound.of(program), List.of(note));
    Score score = new Score("", Beats.ZERO, Beats.ONE, List.of(), List.of(part));
    float[] peak = {0};
    try (Synthesizer synthesizer = Synthesizer.open(22_050, bank)) {
      synthesizer.prepare(score.parts());
      ChannelSetup.of(score).forEach(timed -> synthesizer.send(timed.message(), 0));
      synthesizer.send(MidiEvents.of(score).get(0).message(), 0);
      float[] stereo = new float[2 * 6000];
      synthesizer.read(stereo, 6000);
      IntStream.range(0, stereo.length).forEach(i -> peak[0] = Math.max(peak[0], stereo[i]));
    }
    return peak[0];
  }
}

package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.midi.MidiEvents;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.sound.TinySoundFont.Zone;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SynthesizerTest {
  private static final int SIDE_STICK = 37;

  /** The built-in side stick fades in over three frames, which are silent when rounded. */
  private static final int FADE_IN = 3;

  private static SoundBank bank;

  @BeforeAll
  static void readTheBankOnce() throws Exception {
    bank = SoundBank.builtIn();
  }

  @ParameterizedTest
  @ValueSource(ints = {22_050, 44_100, 48_000})
  void a_note_on_sounds_on_its_frame_wherever_it_falls_in_a_block(int sampleRate) throws Exception {
    for (long frame : new long[] {0, 1, 149, 150, 299, 300, 301, 325, 326, 327, 1999, 2000, 2700}) {
      assertThat(firstSound(sampleRate, frame)).isBetween(frame + FADE_IN - 1, frame + FADE_IN);
    }
  }

  private static long firstSound(int sampleRate, long noteOn) throws SoundFailure {
    try (Synthesizer synthesizer = Synthesizer.open(sampleRate, bank)) {
      synthesizer.prepare(List.of(new Part(Role.DRUMS, Sound.of(0), List.of())));
      synthesizer.send(MidiEvents.message(ShortMessage.NOTE_ON, 9, SIDE_STICK, 100), noteOn);
      float[] sound = new float[2 * 4000];
      synthesizer.read(sound, 4000);
      return firstSound(sound);
    }
  }

  /** A player that hangs in its output is closed from outside, and then goes on with its block. */
  @Test
  void who_still_plays_on_a_closed_synthesizer_gets_silence() throws Exception {
    Synthesizer synthesizer = Synthesizer.open(44_100, bank);
    synthesizer.prepare(List.of(new Part(Role.DRUMS, Sound.of(0), List.of())));
    float[] sound = new float[2 * 4000];
    synthesizer.read(sound, 4000);
    synthesizer.close();
    synthesizer.send(MidiEvents.message(ShortMessage.NOTE_ON, 9, SIDE_STICK, 100), 4000);
    synthesizer.read(sound, 4000);
    assertThat(sound).containsOnly(0);
    assertThat(synthesizer.position()).isEqualTo(8000);
  }

  @Test
  void another_bank_gives_its_sounds_from_the_next_note_on(@TempDir Path folder) throws Exception {
    Part bass = new Part(Role.BASS, Sound.of(33), List.of());
    SoundBank without = bank(folder.resolve("drums.sf2"), Zone.of(128, 0));
    SoundBank with = bank(folder.resolve("bass.sf2"), Zone.of(0, 33));
    try (Synthesizer synthesizer = Synthesizer.open(44_100, without)) {
      synthesizer.prepare(List.of(bass));
      synthesizer.send(MidiEvents.message(ShortMessage.PROGRAM_CHANGE, 1, 33, 0), 0);
      assertThat(firstSound(struck(synthesizer))).isEqualTo(-1);
      synthesizer.change(with);
      assertThat(synthesizer.bank()).isSameAs(with);
      assertThat(firstSound(struck(synthesizer))).isNotNegative();
    }
  }

  private static SoundBank bank(Path file, Zone zone) throws Exception {
    return SoundBank.read(Files.write(file, TinySoundFont.of(zone).bytes()));
  }

  private static float[] struck(Synthesizer synthesizer) {
    ShortMessage on = MidiEvents.message(ShortMessage.NOTE_ON, 1, 40, 100);
    synthesizer.send(on, synthesizer.position());
    float[] sound = new float[2 * 4000];
    synthesizer.read(sound, 4000);
    return sound;
  }

  private static long firstSound(float[] stereo) {
    for (int i = 0; i < stereo.length; i++) {
      if (stereo[i] != 0) {
        return i / 2;
      }
    }
    return -1;
  }
}

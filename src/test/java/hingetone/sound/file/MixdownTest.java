package hingetone.sound.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.midi.MidiFile;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;

class MixdownTest {
  private static final int RATE = 22_050;
  private static final int BEATS = 8;

  /** The other way round through the file, read back by the JDK's reader of MIDI files. */
  @Test
  void the_mix_is_as_loud_in_each_beat_as_its_midi_file_played_with_the_same_bank()
      throws Exception {
    Score score = score();
    SoundBank bank = SoundBank.builtIn();
    double[] mix = new double[BEATS];
    long[] at = {0};
    Mixdown.of(score, bank, RATE)
        .play((stereo, frames, done) -> at[0] = add(stereo, frames, at[0], mix));
    double[] file = new double[BEATS];
    try (Synthesizer synthesizer = Synthesizer.open(RATE, bank)) {
      synthesizer.prepare(score.bySound());
      send(MidiFile.bytes(score), synthesizer);
      float[] stereo = new float[2 * synthesizer.blockFrames()];
      for (long frame = 0; frame < BEATS * RATE / 2; ) {
        synthesizer.read(stereo, synthesizer.blockFrames());
        frame = add(stereo, synthesizer.blockFrames(), frame, file);
      }
    }
    for (int beat = 0; beat < BEATS; beat++) {
      assertThat(10 * Math.log10(mix[beat] / file[beat]))
          .as("dB in beat " + beat)
          .isCloseTo(0, within(0.2));
    }
  }

  /** Adds up the squares within each beat of half a second; gives the next frame. */
  private static long add(float[] stereo, int frames, long from, double[] energy) {
    for (int i = 0; i < frames; i++) {
      int beat = (int) ((from + i) / (RATE / 2));
      if (beat < energy.length) {
        energy[beat] += stereo[2 * i] * stereo[2 * i] + stereo[2 * i + 1] * stereo[2 * i + 1];
      }
    }
    return from + frames;
  }

  private static void send(byte[] midiFile, Synthesizer synthesizer) throws Exception {
    Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(midiFile));
    for (Track track : sequence.getTracks()) {
      for (int i = 0; i < track.size(); i++) {
        if (track.get(i).getMessage() instanceof ShortMessage message) {
          synthesizer.send(message, track.get(i).getTick() * RATE / (2 * MidiFile.TICKS));
        }
      }
    }
  }

  /** A bar of clicks, then soft drums in much room and a bass that changes its sound. */
  private static Score score() {
    List<Note> clicks = new ArrayList<>();
    List<Note> drums = new ArrayList<>();
    List<Note> bass = new ArrayList<>();
    for (int beat = 0; beat < 4; beat++) {
      Beats at = Beats.of(beat);
      clicks.add(new Note(at.minus(Beats.of(4)), Beats.of(1, 8), 37, 100));
      drums.add(new Note(at, Beats.of(1, 4), beat % 2 == 0 ? 36 : 38, 100));
      bass.add(new Note(at, Beats.of(1, 2), 40, 40));
    }
    return new Score(
        "",
        Beats.of(4),
        Beats.of(4),
        List.of(
            new Mark.OfTempo(Beats.ZERO, Tempo.of(120)),
            new Mark.OfSound(Beats.of(2), Role.BASS, new Sound(19, 127, 0, 0))),
        List.of(
            new Part(Role.DRUMS, new Sound(0, 50, 40, 110), drums),
            new Part(Role.BASS, new Sound(33, 30, 64, 0), bass),
            new Part(Role.CLICK, Sound.CLICK, clicks)));
  }
}

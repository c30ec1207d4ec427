package hingetone.sound.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiEvents;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sound.FakeSoundOutput;
import hingetone.sound.FakeSoundOutput.Pace;
import hingetone.sound.Limiter;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.Synthesizer;
import hingetone.sound.level.LoudnessMeter;
import hingetone.sound.level.PeakMeter;
import hingetone.time.Beats;
import hingetone.time.Clock;
import hingetone.time.Tempo;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SoundFileTest {
  private static final float ONE_STEP = 1 / 32_768f;

  private static SoundBank bank;

  @TempDir Path folder;

  @BeforeAll
  static void readTheBankOnce() throws SoundFailure {
    bank = SoundBank.builtIn();
  }

  @Test
  void a_file_has_its_loudness_and_its_peak_and_is_the_same_each_time() throws Exception {
    Path first = folder.resolve("first.wav");
    Path second = folder.resolve("second.wav");
    SoundFile.Result result = SoundFile.write(band(), bank, first, done -> {});
    SoundFile.write(band(), bank, second, done -> {});

    LoudnessMeter meter = new LoudnessMeter(44_100);
    float[] stereo = shorts(first);
    meter.add(stereo, stereo.length / 2);
    assertThat(meter.integrated())
        .isCloseTo(-16, within(1.0))
        .isCloseTo(result.loudness(), within(0.05));
    PeakMeter peak = new PeakMeter();
    peak.add(stereo, stereo.length / 2);
    assertThat(peak.truePeak()).isLessThan(-1);
    assertThat(first).hasSameBinaryContentAs(second);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactlyInAnyOrder(first, second);
    }
  }

  /** The canonical header of a WAV file: RIFF, format 1, two channels, 44,100, 16 bits. */
  @Test
  void a_file_says_what_it_holds() throws Exception {
    Path file = folder.resolve("band.wav");
    SoundFile.write(band(), bank, file, done -> {});
    try (var stream = javax.sound.sampled.AudioSystem.getAudioInputStream(file.toFile())) {
      assertThat(stream.getFormat())
          .hasToString("PCM_SIGNED 44100.0 Hz, 16 bit, stereo, 4 bytes/frame, little-endian");
      assertThat(stream.getFrameLength()).isEqualTo((Files.size(file) - 44 - 42) / 4);
      assertThat(stream.getFrameLength() / 44_100.0).isBetween(8.0, 17.0);
    }
  }

  @Test
  void stems_are_as_long_as_the_file_and_add_up_to_it_before_its_limiter() throws Exception {
    Path whole = folder.resolve("whole.wav");
    Path drums = folder.resolve("drums.wav");
    Path bass = folder.resolve("bass.wav");
    SoundFile.Result result =
        SoundFile.write(
            band(), bank, whole, Map.of(Role.DRUMS, drums, Role.BASS, bass), done -> {});
    float[] sum = floats(drums);
    float[] other = floats(bass);
    float[] limited = shorts(whole);
    assertThat(sum).hasSameSizeAs(other).hasSameSizeAs(limited);
    assertThat(sum.length / 2).isEqualTo((int) Math.round(result.seconds() * 44_100));
    int untouched = 0;
    for (int i = 0; i < sum.length; i++) {
      sum[i] += other[i];
      untouched += Math.abs(sum[i] - limited[i]) <= ONE_STEP ? 1 : 0;
    }
    // Where the limiter rests, the file is the sum rounded to 16 bits.
    assertThat(untouched).isGreaterThan(sum.length / 2);

    float[] mix = mix(band());
    assertThat(mix).hasSameSizeAs(sum);
    float gain = sum[90_001] / mix[90_001];
    float farthest = 0;
    for (int i = 0; i < mix.length; i++) {
      farthest = Math.max(farthest, Math.abs(sum[i] - gain * mix[i]));
    }
    assertThat(farthest).isLessThan(1e-4f);
  }

  @Test
  void a_file_is_the_same_with_and_without_stems() throws Exception {
    Path alone = folder.resolve("alone.wav");
    Path beside = folder.resolve("beside.wav");
    SoundFile.write(band(), bank, alone, done -> {});
    SoundFile.write(
        band(), bank, beside, Map.of(Role.BASS, folder.resolve("bass.wav")), done -> {});
    assertThat(beside).hasSameBinaryContentAs(alone);
  }

  @Test
  void silence_stays_silent() throws Exception {
    Score silent = new Score("", Beats.ZERO, Beats.of(4), List.of(), List.of());
    SoundFile.Result result =
        SoundFile.write(silent, bank, folder.resolve("silence.wav"), done -> {});
    assertThat(result.truePeak()).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(result.seconds()).isCloseTo(2.4, within(0.01));
  }

  /** Through the synthesizer, the limiter and the line to a captured stream. */
  @Test
  void every_note_on_in_a_captured_stream_lies_within_a_frame_of_its_place() throws Exception {
    Score score = clicks();
    List<Long> due = new ArrayList<>();
    score
        .parts()
        .get(0)
        .notes()
        .forEach(n -> due.add(score.tempoMap().frame(n.onset(), n.offsetMicros(), 44_100)));
    Limiter limiter = new Limiter(44_100, -1);
    List<Long> heard = onsets(played(score, due, limiter));
    assertThat(heard).hasSameSizeAs(due);
    long fadeIn = heard.get(0) - due.get(0) - limiter.delayFrames();
    assertThat(fadeIn).isBetween(0L, 8L);
    for (int i = 0; i < due.size(); i++) {
      assertThat(heard.get(i) - limiter.delayFrames() - fadeIn)
          .as("note " + i)
          .isCloseTo(due.get(i), within(1L));
    }
  }

  private static float[] played(Score score, List<Long> due, Limiter limiter) throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE);
        OutputLine line = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM);
        Synthesizer synthesizer = Synthesizer.open(44_100, bank)) {
      synthesizer.prepare(score.parts());
      ChannelSetup.of(score).forEach(timed -> synthesizer.send(timed.message(), 0));
      int block = synthesizer.blockFrames();
      float[] stereo = new float[2 * block];
      int next = 0;
      while (synthesizer.position() < due.get(due.size() - 1) + 44_100) {
        while (next < due.size() && due.get(next) < synthesizer.position() + block) {
          synthesizer.send(MidiEvents.message(0x90, 9, 37, 100), due.get(next++));
        }
        synthesizer.read(stereo, block);
        limiter.apply(stereo, block);
        line.write(stereo, block);
      }
      return output.captured();
    }
  }

  /** Where sound begins after at least a hundredth of a second of silence. */
  private static List<Long> onsets(float[] stereo) {
    List<Long> onsets = new ArrayList<>();
    int silent = 1000;
    for (int frame = 0; frame < stereo.length / 2; frame++) {
      if (stereo[2 * frame] == 0) {
        silent++;
      } else {
        if (silent > 441) {
          onsets.add((long) frame);
        }
        silent = 0;
      }
    }
    return onsets;
  }

  /** Side sticks in triplets at an odd tempo that changes, some early and some late. */
  private static Score clicks() {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      notes.add(new Note(Beats.of(2L * i, 3), Beats.of(1, 8), 37, 100, (i % 5 - 2) * 1234L + 2468));
    }
    return new Score(
        "",
        Beats.ZERO,
        Beats.of(40),
        List.of(
            new Mark.OfTempo(Beats.ZERO, Tempo.of(77)),
            new Mark.OfTempo(Beats.of(17), Tempo.parse("63.7").orElseThrow())),
        List.of(new Part(Role.DRUMS, new Sound(0, 100, 64, 0), notes)));
  }

  /** Drums and bass for four bars. */
  private static Score band() {
    List<Note> drums = new ArrayList<>();
    List<Note> bass = new ArrayList<>();
    for (int eighth = 0; eighth < 32; eighth++) {
      Beats onset = Beats.of(eighth, 2);
      drums.add(new Note(onset, Beats.of(1, 4), 42, 70));
      drums.add(new Note(onset, Beats.of(1, 4), eighth % 4 == 2 ? 38 : 36, 110));
      bass.add(new Note(onset, Beats.of(1, 2), eighth < 16 ? 33 : 35, 90));
    }
    return new Score(
        "",
        Beats.ZERO,
        Beats.of(16),
        List.of(new Mark.OfTempo(Beats.ZERO, Tempo.of(112))),
        List.of(
            new Part(Role.DRUMS, new Sound(0, 100, 64, 20), drums),
            new Part(Role.BASS, new Sound(33, 100, 60, 5), bass)));
  }

  private static float[] mix(Score score) throws SoundFailure, IOException {
    List<float[]> blocks = new ArrayList<>();
    Mixdown.of(score, bank, 44_100).play((stereo, frames, done) -> blocks.add(stereo.clone()));
    float[] all = new float[blocks.stream().mapToInt(b -> b.length).sum()];
    int at = 0;
    for (float[] block : blocks) {
      System.arraycopy(block, 0, all, at, block.length);
      at += block.length;
    }
    return all;
  }

  private static float[] floats(Path wav) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(wav)).order(ByteOrder.LITTLE_ENDIAN);
    float[] samples = new float[bytes.getInt(40) / 4];
    bytes.position(44).slice().order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().get(samples);
    return samples;
  }

  private static float[] shorts(Path wav) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(wav)).order(ByteOrder.LITTLE_ENDIAN);
    float[] samples = new float[bytes.getInt(40) / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = bytes.getShort(44 + 2 * i) / 32768f;
    }
    return samples;
  }
}

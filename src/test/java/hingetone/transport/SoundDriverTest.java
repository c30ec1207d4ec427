package hingetone.transport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.sequencer.ClockSignals;
import hingetone.sequencer.Command;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.ReadyLaps;
import hingetone.sequencer.Rig;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Timeline;
import hingetone.sound.FakeSoundOutput;
import hingetone.sound.Limiter;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.time.Beats;
import hingetone.time.Playhead;
import hingetone.time.Tempo;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import org.junit.jupiter.api.Test;

/**
 * The sound that reaches the output: the first sample of each stroke against the frame that the
 * tempo, worked out by hand, asks for.
 */
class SoundDriverTest {
  private static final int RATE = 44_100;
  private static final int SIDE_STICK = 37;

  /** The built-in side stick fades in over three frames, which are silent when rounded. */
  private static final int FADE_IN = 3;

  private static final int DELAY = new Limiter(RATE, -1).delayFrames();

  private final Playhead playhead = new Playhead();
  private final Queue<Command> commands = new ArrayDeque<>();
  private final List<SequencerEvent> moments = new ArrayList<>();

  /** When each stroke is due, in nanoseconds from the first frame. */
  private final List<Double> due = new ArrayList<>();

  private SoundDriver driver;
  private long frames;
  private int blockFrames;

  /** Two bars of 4/4 with a dry stroke on each beat. */
  private static Score strokes() {
    List<Note> notes = new ArrayList<>();
    for (int beat = 0; beat < 8; beat++) {
      notes.add(new Note(Beats.of(beat), Beats.of(1, 4), SIDE_STICK, 100));
    }
    Part part = new Part(Role.DRUMS, new Sound(0, 100, 64, 0), notes);
    return new Score("Test", Beats.ZERO, Beats.of(8), List.of(), List.of(part));
  }

  private void open(Synthesizer synthesizer, OutputLine line) {
    PlaySetup setup = PlaySetup.USUAL.withVolume(100);
    ReadyLaps laps = new Rig(n -> strokes()).laps;
    synthesizer.prepare(strokes().parts());
    Timeline timeline = new Timeline(laps, setup, new ClockSignals(false), false, playhead);
    blockFrames = synthesizer.blockFrames();
    driver =
        new SoundDriver(
            new Playback(
                timeline, playhead, commands, () -> Math.round(frames * 1e9 / RATE), moments::add),
            synthesizer,
            line);
  }

  private void turn() {
    driver.turn();
    frames += blockFrames;
  }

  private double nanos() {
    return frames * 1e9 / RATE;
  }

  /** Plays strokes so far apart, the first due at a moment, up to the block before another. */
  private double strokesUntil(double first, double apart, double end) {
    double next = first;
    while (nanos() < end) {
      turn();
    }
    for (; next < nanos(); next += apart) {
      due.add(next);
    }
    return next;
  }

  @Test
  void strokes_sound_on_their_frames_through_laps_loops_tempo_changes_and_mutes() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.FREE);
        Synthesizer synthesizer = Synthesizer.open(RATE, SoundBank.builtIn());
        OutputLine line = OutputLine.open(OutputLine.Settings.usual(), System::nanoTime)) {
      open(synthesizer, line);
      turn();
      commands.add(new Command.Play());
      double quarter = 60e9 / 100;
      double next = strokesUntil(nanos() + Timeline.LEAD, quarter, 12e9);
      for (int bpm : new int[] {137, 61, 90}) {
        double now = nanos();
        commands.add(new Command.SetTempo(Tempo.of(bpm)));
        double other = 60e9 / bpm;
        next = strokesUntil(now + (next - now) * other / quarter, other, now + 11e9);
        quarter = other;
      }
      commands.add(new Command.Loop(2, 2));
      next = strokesUntil(next, quarter, nanos() + 14e9);
      commands.add(new Command.Mute(Role.DRUMS, true));
      int heard = due.size();
      next = strokesUntil(next, quarter, nanos() + 5e9);
      due.subList(heard, due.size()).clear();
      commands.add(new Command.Mute(Role.DRUMS, false));
      strokesUntil(next, quarter, nanos() + 5e9);
      assertThat(onsets(output.captured())).hasSameSizeAs(due);
      List<Long> errors = errors(onsets(output.captured()));
      assertThat(errors).allMatch(error -> Math.abs(error) <= 1);
    }
  }

  private List<Long> errors(List<Long> onsets) {
    List<Long> errors = new ArrayList<>();
    for (int i = 0; i < onsets.size(); i++) {
      long dueFrame = Math.round(due.get(i) * RATE / 1e9);
      errors.add(onsets.get(i) - DELAY - FADE_IN - dueFrame);
    }
    return errors;
  }

  /** The frames at which sound begins after at least 100 ms of silence. */
  private static List<Long> onsets(float[] stereo) {
    List<Long> onsets = new ArrayList<>();
    int silent = RATE;
    for (int frame = 0; frame < stereo.length / 2; frame++) {
      boolean sounds = stereo[2 * frame] != 0 || stereo[2 * frame + 1] != 0;
      if (sounds && silent > RATE / 10) {
        onsets.add((long) frame);
      }
      silent = sounds ? 0 : silent + 1;
    }
    return onsets;
  }

  @Test
  void the_playhead_says_what_is_heard_not_what_is_written() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.STEPPED);
        Synthesizer synthesizer = Synthesizer.open(RATE, SoundBank.builtIn());
        OutputLine line =
            OutputLine.open(OutputLine.Settings.usual(), () -> Math.round(frames * 1e9 / RATE))) {
      open(synthesizer, line);
      int buffered = 10 * blockFrames;
      commands.add(new Command.Play());
      turnsBehind(output, 10, 5 * RATE);
      long lag = Math.round((buffered + DELAY) * 1e9 / RATE);
      long beat3 = Timeline.LEAD + 1_200_000_000L;
      assertThat(playhead.heardAt(0)).isCloseTo(lag, within(7_000_000L));
      assertThat(playhead.at(playhead.heardAt(beat3)).position()).hasToString("bar 1 beat 3");
    }
  }

  @Test
  void what_is_seen_does_not_jump_when_a_lost_output_is_taken_back() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.STEPPED);
        Synthesizer synthesizer = Synthesizer.open(RATE, SoundBank.builtIn());
        OutputLine line =
            OutputLine.open(OutputLine.Settings.usual(), () -> Math.round(frames * 1e9 / RATE))) {
      open(synthesizer, line);
      commands.add(new Command.Play());
      turnsBehind(output, 10, 2 * RATE);
      long before = playhead.heardAt(0);
      output.vanish();
      assertThat(driver.turn()).isFalse();
      frames += blockFrames;
      assertThat(line.reopen()).isFalse();
      long lag = driver.lag();
      output.comeBack();
      assertThat(line.reopen()).isTrue();
      assertThat(driver.resume(lag)).isTrue();
      turnsBehind(output, 0, 4 * RATE);
      assertThat(moments).contains(new SequencerEvent.Found("sound output"));
      // The lag, here 64 ms, is made up to whole blocks of 7 ms.
      assertThat(playhead.heardAt(0)).isCloseTo(before, within(10_000_000L));
    }
  }

  /** Turns until so many frames have passed; the output plays as many, so many blocks later. */
  private void turnsBehind(FakeSoundOutput output, int blocks, long until) {
    long from = frames + (long) blocks * blockFrames;
    while (frames < until) {
      if (frames >= from) {
        output.play(blockFrames);
      }
      turn();
    }
  }
}

package hingetone.sequencer;

import hingetone.midi.MidiNote;
import hingetone.score.Role;
import hingetone.time.Beats;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What sounds: the notes being held, the channels with their levels and mutes, and the click.
 *
 * <p>Notes of bars that were broken off do not start any more, and at every break what must not
 * ring on is ended.
 */
final class Ensemble {
  private static final Beats CLICK_LENGTH = Beats.of(1, 8);

  private final PlaySetup setup;
  private final ChannelMixer mixer;
  private final SoundingNotes voices = new SoundingNotes();
  private Metronome metronome = Metronome.OFF;

  /** Band notes of plans before this do not start any more. */
  private int bandFloor;

  /** The latest plan of which a note has started. */
  private int touched;

  /**
   * An ensemble in silence.
   *
   * @param volumeByChannel whether the level of everything is set channel by channel
   */
  Ensemble(PlaySetup setup, boolean volumeByChannel) {
    this.setup = setup;
    this.mixer = new ChannelMixer(setup, volumeByChannel);
  }

  /** Mutes, levels and the click; whether the command was one of these. */
  boolean obey(Command command, long now, MessageSink sink) {
    if (command instanceof Command.Mute c) {
      mixer.mute(c.role(), c.muted());
      voices.release(v -> mixer.isMuted(v.role()), now, sink);
      letGoWhereNothingSounds(now, sink);
    } else if (command instanceof Command.StepLevel c) {
      mixer.stepLevel(c.role(), c.percent(), now);
    } else if (command instanceof Command.StepVolume c) {
      mixer.stepVolume(c.percent(), now);
    } else if (command instanceof Command.Click c) {
      metronome = c.metronome();
    } else {
      return false;
    }
    return true;
  }

  /** When a level moves next; {@link Long#MAX_VALUE} when none does. */
  long nextDue() {
    return mixer.nextDue();
  }

  void moveLevels(long now, MessageSink sink) {
    mixer.move(now, sink);
  }

  /** A note of a bar as it will be played, in the key of that bar. */
  PlannedNote voice(PlannedBar bar, MidiNote note) {
    boolean moves = !note.role().isPercussion();
    int key = note.key() + (moves ? bar.course().keyShift() : 0);
    return new PlannedNote(
        note.role(),
        setup.channel(note.role()),
        key > 127 ? key - 12 : key < 0 ? key + 12 : key,
        note.velocity(),
        bar.plan(),
        bar.start().plus(note.off()),
        Math.max(-Timeline.LEAD, note.onMicros() * 1000),
        Math.max(-Timeline.LEAD, note.offMicros() * 1000));
  }

  /** The click on a beat, where there is one. */
  Optional<MidiNote> click(PlannedBar bar, int beat, Beats at) {
    boolean counts = bar.bar() < 1;
    boolean wanted = counts ? bar.bare() : metronome.clicks(bar.bar(), beat);
    boolean accents = counts || metronome.accents();
    return wanted
        ? Optional.of(Metronome.click(bar.music().meter(), beat, accents, at, CLICK_LENGTH))
        : Optional.empty();
  }

  /** The sounds of the coming bar are set up, a little early, as a file has it. */
  void setUp(PlannedBar bar, long now, MessageSink sink) {
    mixer.introduce(bar.music().sounds(), now, sink);
  }

  /**
   * A bar begins.
   *
   * @param keyMoves whether its keys are others than those of the bar before
   */
  void begin(PlannedBar bar, boolean keyMoves, long now, MessageSink sink) {
    if (bar.step().broken() || bar.silent() || keyMoves) {
      bandFloor = bar.plan();
      boolean all = bar.step().broken();
      voices.release(v -> v.plan() < bar.plan() && (all || v.role() != Role.CLICK), now, sink);
      letGoWhereNothingSounds(now, sink);
    }
  }

  /**
   * Where a note of the coming bar sounds already, its channel is left alone; before the first note
   * there is nothing to let go.
   */
  private void letGoWhereNothingSounds(long now, MessageSink sink) {
    if (touched > 0) {
      mixer.letGo(channel -> !voices.soundOn(channel), now, sink);
    }
  }

  /** Strikes a note, unless it is muted or its bar was broken off; whether it was struck. */
  boolean strike(PlannedNote voice, long now, MessageSink sink) {
    touched = Math.max(touched, voice.plan());
    boolean fallen = voice.role() != Role.CLICK && voice.plan() < bandFloor;
    if (fallen || mixer.isMuted(voice.role())) {
      return false;
    }
    voices.start(voice, mixer.velocity(voice.role(), voice.velocity()), now, sink);
    return true;
  }

  void end(PlannedNote voice, long now, MessageSink sink) {
    voices.end(voice, now, sink);
  }

  /** Whether a note of a planned bar has started. */
  boolean hasTouched(PlannedBar bar) {
    return bar.plan() <= touched;
  }

  /** Lets every note go and lifts the pedals. */
  void silence(long now, MessageSink sink) {
    voices.release(voice -> true, now, sink);
    mixer.letGo(channel -> true, now, sink);
  }

  /** Sets up every channel of a device that has just come back. */
  void repeatSetup(long now, MessageSink sink) {
    mixer.letGo(channel -> true, now, sink);
    mixer.repeat(now, sink);
  }

  Set<Role> muted() {
    return mixer.muted();
  }

  Map<Role, Integer> levels() {
    return mixer.levels();
  }

  int volume() {
    return mixer.volume();
  }

  Metronome metronome() {
    return metronome;
  }
}

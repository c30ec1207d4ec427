package hingetone.sequencer;

import hingetone.midi.ChannelSetup;
import hingetone.midi.MidiNote;
import hingetone.time.Beats;
import hingetone.time.Playhead;
import hingetone.time.Position;
import hingetone.time.Tempo;

/**
 * The sequencer's core: exact musical time against the nanoseconds of an output, without a thread,
 * a clock or a device.
 *
 * <p>Bars are planned one at a time, {@value #LEAD} ns before they begin, so that notes played
 * early can start in time. Whoever drives it asks {@link #advance} for everything that is due
 * before a moment, again and again with later moments; live changes take effect at the moment last
 * asked for. The order at one instant: note off, control change, program change, note on.
 */
public final class Timeline {
  /** How long before its bar line a bar is planned; no note starts earlier before its place. */
  public static final long LEAD = 60_000_000;

  private static final long SET_UP = ChannelSetup.EARLY_MICROS * 1000;
  private static final long SHORTEST_NOTE = 1_000_000;

  private final Playhead playhead;
  private final Ensemble ensemble;
  private final ClockSignals signals;
  private final Agenda agenda = new Agenda();
  private final TempoLine line = new TempoLine();
  private final BarPlanner planner;
  private final TapTempo taps = new TapTempo();

  private Status.Motion motion = Status.Motion.STOPPED;

  /** Everything due before this is handed out. */
  private long horizon;

  private long pausedAt;

  private boolean over;
  private volatile Status status;

  /**
   * A timeline that stands at the top of a form.
   *
   * @param signals what other gear is told
   * @param volumeByChannel whether the level of everything is set channel by channel
   */
  public Timeline(
      ReadyLaps laps,
      PlaySetup setup,
      ClockSignals signals,
      boolean volumeByChannel,
      Playhead playhead) {
    this.signals = signals;
    this.playhead = playhead;
    this.ensemble = new Ensemble(setup, volumeByChannel);
    this.planner = new BarPlanner(laps, setup, line);
    standAtTop();
    status = makeStatus();
  }

  public Status status() {
    return status;
  }

  /** When to ask next; {@link Long#MAX_VALUE} when nothing will come without a command. */
  public long nextDue() {
    long next = ensemble.nextDue();
    return motion == Status.Motion.PLAYING
        ? Math.min(next, Math.min(agenda.nextDue(), planDue()))
        : next;
  }

  /** Hands out everything due before a moment. */
  public void advance(long until, MessageSink sink) {
    for (long due = nextDue(); due < until; due = nextDue()) {
      horizon = Math.max(horizon, due);
      if (ensemble.nextDue() <= due) {
        ensemble.moveLevels(horizon, sink);
      } else if (planDue() <= due) {
        planNext();
      } else {
        agenda.take().act().perform(due, sink);
      }
    }
    horizon = Math.max(horizon, until);
  }

  private long planDue() {
    return over ? Long.MAX_VALUE : line.nanosAt(planner.end()) - LEAD;
  }

  // Planning

  private void planNext() {
    if (planner.isOver()) {
      over = true;
      addAt(planner.end(), Agenda.Kind.END, 0, planner.nextPlan(), this::finish);
    } else {
      PlannedBar next = planner.take();
      playhead.enter(stretch(next));
      addEntries(next);
    }
  }

  private void addEntries(PlannedBar bar) {
    add(bar, Agenda.Kind.SET_UP, Beats.ZERO, -SET_UP, (n, s) -> ensemble.setUp(bar, n, s));
    add(bar, Agenda.Kind.BAR, Beats.ZERO, 0, (now, sink) -> begin(bar, now, sink));
    for (int beat = 1; beat <= bar.music().meter().beatsPerBar(); beat++) {
      Beats at = bar.music().meter().toQuarters(Beats.of(beat - 1L));
      Position position = Position.of(bar.bar(), beat);
      add(bar, Agenda.Kind.BEAT, at, 0, (now, sink) -> beat(bar, at, position, now, sink));
    }
    if (signals.isOn()) {
      addSignals(bar);
    }
    if (!bar.silent()) {
      bar.music().notes().forEach(note -> addNote(bar, note));
      planner.pickups(bar).forEach(p -> addNote(bar, p.later(bar.music().length())));
    }
  }

  private void addSignals(PlannedBar bar) {
    if (bar.bar() >= 1) {
      Beats at = planner.fromTop(bar);
      add(
          bar,
          Agenda.Kind.CLOCK,
          Beats.ZERO,
          -ClockSignals.AHEAD_NANOS,
          (now, sink) -> signals.barComes(at, bar.step().broken(), now, sink));
    }
    long clocks = bar.music().length().toUnits(ClockSignals.PER_QUARTER);
    for (long i = 0; i < clocks; i++) {
      Beats at = Beats.of(i, ClockSignals.PER_QUARTER);
      add(bar, Agenda.Kind.CLOCK, at, 0, signals::clock);
    }
  }

  private void addNote(PlannedBar bar, MidiNote note) {
    PlannedNote voice = ensemble.voice(bar, note);
    add(bar, Agenda.Kind.NOTE_ON, note.on(), voice.onOffset(), (n, s) -> strike(voice, n, s));
  }

  private void add(PlannedBar bar, Agenda.Kind kind, Beats inBar, long offset, Agenda.Act act) {
    addAt(bar.start().plus(inBar), kind, offset, bar.plan(), act);
  }

  private void addAt(Beats played, Agenda.Kind kind, long offset, int plan, Agenda.Act act) {
    agenda.add(Math.max(horizon, line.nanosAt(played) + offset), kind, played, offset, plan, act);
  }

  // What happens when it is due

  private void begin(PlannedBar bar, long now, MessageSink sink) {
    int shift = bar.course().keyShift();
    boolean keyMoves = planner.current().filter(b -> b.course().keyShift() != shift).isPresent();
    planner.begin(bar);
    line.forgetBefore(now);
    ensemble.begin(bar, keyMoves, now, sink);
    long heard = playhead.heardAt(now);
    sink.tell(new SequencerEvent.BarLine(heard, bar.lap(), bar.bar(), shift));
    tellChanges(sink);
  }

  private void beat(PlannedBar bar, Beats at, Position position, long now, MessageSink sink) {
    sink.tell(new SequencerEvent.Beat(playhead.heardAt(now), position));
    int beat = (int) position.beat().numerator();
    ensemble.click(bar, beat, at).ifPresent(click -> addNote(bar, click));
  }

  private void strike(PlannedNote voice, long now, MessageSink sink) {
    if (ensemble.strike(voice, now, sink)) {
      long due = Math.max(now + SHORTEST_NOTE, line.nanosAt(voice.off()) + voice.offOffset());
      agenda.add(
          due,
          Agenda.Kind.NOTE_OFF,
          voice.off(),
          voice.offOffset(),
          voice.plan(),
          (n, s) -> ensemble.end(voice, n, s));
    }
  }

  private void finish(long now, MessageSink sink) {
    stop(sink);
    sink.tell(new SequencerEvent.Finished(playhead.heardAt(now)));
  }

  // Live changes

  /** Makes a change take effect at the moment last asked for. */
  public void apply(Command command, MessageSink sink) {
    takeBack();
    if (command instanceof Command.Play) {
      play(sink);
    } else if (command instanceof Command.Pause) {
      pause(sink);
    } else if (command instanceof Command.Stop) {
      stop(sink);
    } else if (command instanceof Command.Restart) {
      stop(sink);
      play(sink);
    } else if (command instanceof Command.Jump c) {
      jump(c.bar());
    } else if (command instanceof Command.JumpToSection c) {
      planner.sectionStart(c.name()).ifPresent(this::jump);
    } else if (!planner.obey(command) && !ensemble.obey(command, horizon, sink)) {
      applyTempo(command);
    }
    tellChanges(sink);
  }

  private void applyTempo(Command command) {
    if (command instanceof Command.SetTempo c) {
      retune(c.tempo());
    } else if (command instanceof Command.StepTempo c) {
      retune(TempoLine.possible(planner.tempo().bpm().add(c.bpm())));
    } else if (command instanceof Command.Tap c) {
      taps.tap(c.nanos()).ifPresent(this::retune);
    } else if (command instanceof Command.Ramp c) {
      retune(c.start());
      planner.ramp(c);
    }
  }

  private void play(MessageSink sink) {
    if (motion == Status.Motion.PLAYING) {
      return;
    }
    if (motion == Status.Motion.PAUSED && !planner.jumps()) {
      long gap = horizon - pausedAt;
      line.shift(gap);
      agenda.reschedule(entry -> entry.due() + gap);
      signals.resume(horizon, sink);
      showMovement();
    } else {
      agenda.clear();
      planner.standAt(planner.target());
      Lap.Bar first = planner.barAt(planner.target());
      Beats start = planner.end();
      line.start(start, horizon + LEAD, first.tempo(), first.meter(), planner.course().scale());
    }
    over = false;
    motion = Status.Motion.PLAYING;
  }

  private void pause(MessageSink sink) {
    if (motion == Status.Motion.PLAYING) {
      silence(sink);
      signals.stop(horizon, sink);
      pausedAt = horizon;
      motion = Status.Motion.PAUSED;
      playhead.enter(standing(playhead.stretchAt(horizon)));
    }
  }

  private void stop(MessageSink sink) {
    silence(sink);
    signals.reset(horizon, sink);
    motion = Status.Motion.STOPPED;
    standAtTop();
    tellChanges(sink);
  }

  private void standAtTop() {
    agenda.clear();
    planner.standAtTop();
    showStanding();
  }

  private void jump(int bar) {
    if (motion == Status.Motion.PLAYING) {
      planner.goTo(bar);
    } else {
      agenda.clear();
      planner.standAt(bar);
      showStanding();
    }
  }

  private void retune(Tempo tempo) {
    planner.retune(tempo);
    if (motion == Status.Motion.STOPPED) {
      return;
    }
    boolean playing = motion == Status.Motion.PLAYING;
    long now = playing ? horizon : pausedAt;
    line.retune(now, planner.course().scale());
    agenda.reschedule(e -> Math.max(now, line.nanosAt(e.played()) + e.offset()));
    if (playing) {
      showMovement();
    }
  }

  /** A planned bar that has not begun to sound is planned anew, so that changes reach it. */
  private void takeBack() {
    if (over) {
      agenda.removeIf(e -> e.kind() == Agenda.Kind.END);
      over = false;
    }
    planner
        .upcoming()
        .filter(bar -> !ensemble.hasTouched(bar) && motion != Status.Motion.STOPPED)
        .ifPresent(
            bar -> {
              agenda.removeIf(e -> e.plan() == bar.plan());
              planner.takeBack();
            });
  }

  /** Lets every note go and lifts the pedals. */
  public void silence(MessageSink sink) {
    ensemble.silence(horizon, sink);
  }

  /**
   * Sets up every channel of a device that has just come back; at the next bar it is told where.
   */
  public void repeatSetup(MessageSink sink) {
    ensemble.repeatSetup(horizon, sink);
    signals.stop(horizon, sink);
  }

  // What holds

  private Playhead.Stretch stretch(PlannedBar bar) {
    return new Playhead.Stretch(
        line.nanosAt(bar.start()),
        bar.lap(),
        bar.bar(),
        1,
        bar.music().meter().beatsPerBar(),
        bar.beatNanos(line.quarterAt(bar.start())));
  }

  /** Tells the playhead where the music stands before it plays. */
  private void showStanding() {
    int bar = planner.target();
    int beats = planner.barAt(bar).meter().beatsPerBar();
    playhead.enter(new Playhead.Stretch(horizon, planner.lapOf(bar), bar, 1, beats, 0));
  }

  /** Tells the playhead how it goes on from here. */
  private void showMovement() {
    Playhead.Stretch here = playhead.stretchAt(horizon);
    planner
        .current()
        .ifPresent(
            bar ->
                playhead.enter(
                    new Playhead.Stretch(
                        horizon,
                        here.lap(),
                        here.bar(),
                        here.beat(),
                        here.beats(),
                        bar.beatNanos(line.quarterAt(bar.start())))));
    planner.upcoming().ifPresent(bar -> playhead.enter(stretch(bar)));
  }

  private static Playhead.Stretch standing(Playhead.Stretch s) {
    return new Playhead.Stretch(s.from(), s.lap(), s.bar(), s.beat(), s.beats(), 0);
  }

  private void tellChanges(MessageSink sink) {
    Status now = makeStatus();
    if (!now.equals(status)) {
      status = now;
      sink.tell(new SequencerEvent.Changed(now));
    }
  }

  private Status makeStatus() {
    return new Status(
        motion,
        planner.tempo(),
        planner.loop(),
        planner.keyShift(),
        planner.course().keyWalk(),
        ensemble.muted(),
        ensemble.levels(),
        ensemble.volume(),
        ensemble.metronome(),
        planner.silentBars(),
        planner.course().ramp(),
        planner.ending());
  }
}

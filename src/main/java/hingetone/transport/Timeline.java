package hingetone.transport;

import hingetone.score.Role;
import hingetone.time.Beats;
import hingetone.time.Playhead;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.util.Optional;

/**
 * The sequencer's core: exact musical time against the nanoseconds of an output, without a thread,
 * a clock or a device.
 *
 * <p>Bars are planned one at a time, {@value #LEAD} ns before they begin, so that notes played
 * early can start in time. Whoever drives it asks {@link #advance} for everything that is due
 * before a moment, again and again with later moments; live changes take effect at the moment last
 * asked for. The order at one instant: note off, control change, program change, note on.
 */
final class Timeline {
  /** How long before its bar line a bar is planned; no note starts earlier before its place. */
  static final long LEAD = 60_000_000;

  private static final long SHORTEST_NOTE = 1_000_000;
  private static final Beats CLICK_LENGTH = Beats.of(1, 8);

  private final Laps laps;
  private final Setup setup;
  private final Playhead playhead;
  private final Route route;
  private final Mixer mixer;
  private final ClockSignals signals;
  private final Agenda agenda = new Agenda();
  private final Voices voices = new Voices();
  private final TempoLine line = new TempoLine();
  private final TapTempo taps = new TapTempo();

  private Status.Motion motion = Status.Motion.STOPPED;
  private Metronome metronome = Metronome.OFF;
  private Command.SilentBars silentBars = Command.SilentBars.NONE;
  private Course course = Course.START;
  private Optional<PlannedBar> current = Optional.empty();
  private Optional<PlannedBar> upcoming = Optional.empty();

  /** Everything due before this is handed out. */
  private long horizon;

  private long pausedAt;

  /** Up to here bars are planned, in quarter notes played. */
  private Beats planned = Beats.ZERO;

  private int plans;

  /** Band notes of plans before this do not start any more. */
  private int bandFloor;

  /** The latest plan of which a note has started. */
  private int touched;

  private boolean over;
  private volatile Status status;

  /**
   * A timeline that stands at the top of a form.
   *
   * @param laps the laps; the first must be ready
   * @param signals what other gear is told
   * @param volumeByChannel whether the level of everything is set channel by channel
   */
  Timeline(
      Laps laps, Setup setup, ClockSignals signals, boolean volumeByChannel, Playhead playhead) {
    this.laps = laps;
    this.setup = setup;
    this.signals = signals;
    this.playhead = playhead;
    this.mixer = new Mixer(setup, volumeByChannel);
    this.route = new Route(laps.lap(1).orElseThrow(), setup);
    standAtTop();
    status = makeStatus();
  }

  Status status() {
    return status;
  }

  /** When to ask next; {@link Long#MAX_VALUE} when nothing will come without a command. */
  long nextDue() {
    long next = mixer.nextDue();
    return motion == Status.Motion.PLAYING
        ? Math.min(next, Math.min(agenda.nextDue(), planDue()))
        : next;
  }

  /** Hands out everything due before a moment. */
  void advance(long until, Sink sink) {
    for (long due = nextDue(); due < until; due = nextDue()) {
      horizon = Math.max(horizon, due);
      if (mixer.nextDue() <= due) {
        mixer.move(horizon, sink);
      } else if (planDue() <= due) {
        planNext();
      } else {
        agenda.take().act().perform(due, sink);
      }
    }
    horizon = Math.max(horizon, until);
  }

  private long planDue() {
    return over ? Long.MAX_VALUE : line.nanosAt(planned) - LEAD;
  }

  // Planning

  private void planNext() {
    if (route.isOver()) {
      over = true;
      addAt(planned, Agenda.Kind.END, 0, ++plans, this::finish);
      return;
    }
    Course before = course;
    boolean ready =
        route.target().isEmpty() || laps.lap(route.lapOf(route.target().getAsInt())).isPresent();
    Route.Step step = ready ? route.take() : route.takeNext();
    Lap lap = readyLap(route.lapOf(step.bar()));
    Lap.Bar music = route.bar(lap, step.bar());
    if (step.again()) {
      course = course.again(music.tempo());
    } else if (course.passes() == 0 && step.bar() >= 1) {
      course = course.firstPass();
    }
    line.enter(planned, music.tempo(), music.meter(), course.scale());
    PlannedBar next =
        new PlannedBar(
            ++plans,
            step,
            step.bar() < 1 ? 0 : route.lapOf(step.bar()),
            music,
            planned,
            TempoLine.played(music.tempo(), course.scale()),
            course,
            before,
            silentBars.isSilent(step.bar()),
            step.bar() < 1 && lap.countIn().stream().allMatch(b -> b.notes().isEmpty()));
    planned = next.end();
    upcoming = Optional.of(next);
    playhead.enter(stretch(next));
    addEntries(next, lap);
  }

  /** The lap, or the nearest before it: better the same lap twice than a hole. */
  private Lap readyLap(int number) {
    laps.playing(number);
    for (int lap = number; lap > 1; lap--) {
      Optional<Lap> ready = laps.lap(lap);
      if (ready.isPresent()) {
        return ready.get();
      }
    }
    return laps.lap(1).orElseThrow();
  }

  private void addEntries(PlannedBar bar, Lap lap) {
    add(bar, Agenda.Kind.BAR, Beats.ZERO, 0, (now, sink) -> begin(bar, now, sink));
    for (int beat = 1; beat <= bar.music().meter().beatsPerBar(); beat++) {
      Beats at = bar.music().meter().toQuarters(Beats.of(beat - 1L));
      Position position = Position.of(bar.bar(), beat);
      add(bar, Agenda.Kind.BEAT, at, 0, (now, sink) -> beat(bar, at, position, now, sink));
    }
    if (signals.isOn()) {
      addSignals(bar, lap);
    }
    if (!bar.silent()) {
      bar.music().notes().forEach(note -> addNote(bar, note));
      if (route.isLastOfLap(bar.bar()) && route.goesOn() && !route.isOver()) {
        laps.lap(bar.lap() + 1)
            .ifPresent(n -> n.pickups().forEach(p -> addNote(bar, p.moved(bar.music().length()))));
      }
    }
  }

  private void addSignals(PlannedBar bar, Lap lap) {
    if (bar.bar() >= 1) {
      Beats at = bar.music().start().plus(lap.length().times(bar.lap() - 1L));
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

  private void addNote(PlannedBar bar, Lap.PlacedNote note) {
    boolean moves = note.role() != Role.DRUMS && note.role() != Role.CLICK;
    int key = note.key() + (moves ? bar.course().keyShift() : 0);
    Voice voice =
        new Voice(
            note.role(),
            setup.channel(note.role()),
            key > 127 ? key - 12 : key < 0 ? key + 12 : key,
            note.velocity(),
            bar.plan(),
            bar.start().plus(note.on()),
            bar.start().plus(note.off()),
            Math.max(-LEAD, note.onOffset()),
            Math.max(-LEAD, note.offOffset()));
    add(bar, Agenda.Kind.NOTE_ON, note.on(), voice.onOffset(), (n, s) -> strike(voice, n, s));
  }

  private void add(PlannedBar bar, Agenda.Kind kind, Beats inBar, long offset, Agenda.Act act) {
    addAt(bar.start().plus(inBar), kind, offset, bar.plan(), act);
  }

  private void addAt(Beats played, Agenda.Kind kind, long offset, int plan, Agenda.Act act) {
    agenda.add(Math.max(horizon, line.nanosAt(played) + offset), kind, played, offset, plan, act);
  }

  // What happens when it is due

  private void begin(PlannedBar bar, long now, Sink sink) {
    int shift = bar.course().keyShift();
    boolean keyMoves = current.filter(b -> b.course().keyShift() != shift).isPresent();
    current = Optional.of(bar);
    upcoming = upcoming.filter(b -> b != bar);
    line.forgetBefore(now);
    if (bar.step().broken() || bar.silent() || keyMoves) {
      bandFloor = bar.plan();
      boolean all = bar.step().broken();
      voices.release(v -> v.plan() < bar.plan() && (all || v.role() != Role.CLICK), now, sink);
      letGoWhereNothingSounds(now, sink);
    }
    mixer.introduce(bar.music().parts(), now, sink);
    long heard = playhead.heardAt(now);
    if (bar.course().passes() != bar.before().passes()) {
      sink.tell(new Moment.LapStart(heard, bar.lap(), bar.course().passes()));
    }
    sink.tell(new Moment.BarLine(heard, bar.lap(), bar.bar(), shift));
    tellChanges(sink);
  }

  /** Where a note of the coming bar sounds already, its channel is left alone. */
  private void letGoWhereNothingSounds(long now, Sink sink) {
    mixer.letGo(channel -> !voices.soundOn(channel), now, sink);
  }

  private void beat(PlannedBar bar, Beats at, Position position, long now, Sink sink) {
    sink.tell(new Moment.Beat(playhead.heardAt(now), position));
    int beat = (int) position.beat().numerator();
    boolean wanted = bar.bar() < 1 ? bar.bare() : metronome.clicks(bar.bar(), beat);
    if (wanted) {
      boolean accents = bar.bar() < 1 || metronome.accents();
      Lap.PlacedNote click = Metronome.click(bar.music().meter(), beat, accents, at, CLICK_LENGTH);
      addNote(bar, click);
    }
  }

  private void strike(Voice voice, long now, Sink sink) {
    touched = Math.max(touched, voice.plan());
    boolean fallen = voice.role() != Role.CLICK && voice.plan() < bandFloor;
    if (fallen || mixer.isMuted(voice.role())) {
      return;
    }
    voices.start(voice, mixer.velocity(voice.role(), voice.velocity()), now, sink);
    long due = Math.max(now + SHORTEST_NOTE, line.nanosAt(voice.off()) + voice.offOffset());
    agenda.add(
        due,
        Agenda.Kind.NOTE_OFF,
        voice.off(),
        voice.offOffset(),
        voice.plan(),
        (n, s) -> voices.end(voice, n, s));
  }

  private void finish(long now, Sink sink) {
    stop(sink);
    sink.tell(new Moment.Finished(playhead.heardAt(now)));
  }

  // Live changes

  /** Makes a change take effect at the moment last asked for. */
  void apply(Command command, Sink sink) {
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
    } else if (command instanceof Command.Mute c) {
      mixer.mute(c.role(), c.muted());
      voices.release(v -> mixer.isMuted(v.role()), horizon, sink);
      letGoWhereNothingSounds(horizon, sink);
    } else if (command instanceof Command.Level c) {
      mixer.setLevel(c.role(), c.percent(), horizon);
    } else if (command instanceof Command.Volume c) {
      mixer.setVolume(c.percent(), horizon);
    } else if (command instanceof Command.Click c) {
      metronome = c.metronome();
    } else if (command instanceof Command.SilentBars c) {
      silentBars = c;
    } else if (command instanceof Command.KeyShift c) {
      course = course.withKeyShift(c.semitones());
    } else if (command instanceof Command.KeyWalk c) {
      course = course.withKeyWalk(c.semitones());
    } else if (!applyTempo(command)) {
      applyRoute(command);
    }
    tellChanges(sink);
  }

  private boolean applyTempo(Command command) {
    if (command instanceof Command.SetTempo c) {
      retune(c.tempo());
    } else if (command instanceof Command.StepTempo c) {
      retune(TempoLine.possible(tempo().bpm().add(c.bpm())));
    } else if (command instanceof Command.Tap c) {
      taps.tap(c.nanos()).ifPresent(this::retune);
    } else if (command instanceof Command.Ramp c) {
      retune(c.start());
      course = course.withRamp(c, charted());
    } else {
      return false;
    }
    return true;
  }

  private void applyRoute(Command command) {
    if (command instanceof Command.Loop c) {
      route.setLoop(Optional.of(c));
    } else if (command instanceof Command.Unloop) {
      route.setLoop(Optional.empty());
    } else if (command instanceof Command.LoopCrossing c) {
      route.nextCrossing(here()).ifPresent(bar -> route.setLoop(Optional.of(c.around(bar))));
    } else if (command instanceof Command.Jump c) {
      jump(c.bar());
    } else if (command instanceof Command.JumpToSection c) {
      route.sectionStart(c.name(), here()).ifPresent(this::jump);
    }
  }

  private void play(Sink sink) {
    if (motion == Status.Motion.PLAYING) {
      return;
    }
    if (motion == Status.Motion.PAUSED && route.target().isEmpty()) {
      long gap = horizon - pausedAt;
      line.shift(gap);
      agenda.reschedule(entry -> entry.due() + gap);
      signals.resume(horizon, sink);
      showMovement();
    } else {
      agenda.clear();
      upcoming = Optional.empty();
      Lap.Bar first = barAt(route.target().orElse(route.top()));
      line.start(planned, horizon + LEAD, first.tempo(), first.meter(), course.scale());
    }
    over = false;
    motion = Status.Motion.PLAYING;
  }

  private void pause(Sink sink) {
    if (motion == Status.Motion.PLAYING) {
      silence(sink);
      signals.stop(horizon, sink);
      pausedAt = horizon;
      motion = Status.Motion.PAUSED;
      playhead.enter(standing(playhead.stretchAt(horizon)));
    }
  }

  private void stop(Sink sink) {
    silence(sink);
    signals.reset(horizon, sink);
    motion = Status.Motion.STOPPED;
    standAtTop();
    tellChanges(sink);
  }

  private void standAtTop() {
    agenda.clear();
    current = Optional.empty();
    upcoming = Optional.empty();
    course = course.atTop();
    standAt(route.top());
  }

  private void standAt(int bar) {
    route.goTo(bar);
    int beats = barAt(bar).meter().beatsPerBar();
    int lap = bar < 1 ? 0 : route.lapOf(bar);
    playhead.enter(new Playhead.Stretch(horizon, lap, bar, 1, beats, 0));
  }

  private void jump(int bar) {
    if (motion == Status.Motion.PLAYING) {
      route.goTo(bar);
    } else {
      agenda.clear();
      current = Optional.empty();
      standAt(bar);
    }
  }

  private void retune(Tempo tempo) {
    course = course.withScale(TempoLine.scale(tempo, charted()));
    if (motion == Status.Motion.STOPPED) {
      return;
    }
    boolean playing = motion == Status.Motion.PLAYING;
    long now = playing ? horizon : pausedAt;
    line.retune(now, course.scale());
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
    upcoming
        .filter(bar -> bar.plan() > touched && motion != Status.Motion.STOPPED)
        .ifPresent(
            bar -> {
              agenda.removeIf(e -> e.plan() == bar.plan());
              planned = bar.start();
              course = bar.before();
              route.giveBack();
              upcoming = Optional.empty();
            });
  }

  /** Lets every note go and lifts the pedals. */
  void silence(Sink sink) {
    voices.release(voice -> true, horizon, sink);
    mixer.letGo(channel -> true, horizon, sink);
  }

  /**
   * Sets up every channel of a device that has just come back; at the next bar it is told where.
   */
  void repeatSetup(Sink sink) {
    mixer.letGo(channel -> true, horizon, sink);
    mixer.repeat(horizon, sink);
    signals.stop(horizon, sink);
  }

  // What holds

  private int here() {
    return current.map(PlannedBar::bar).orElse(route.target().orElse(route.top()));
  }

  private Lap.Bar barAt(int bar) {
    return route.bar(readyLap(route.lapOf(bar)), bar);
  }

  /** The tempo that the chart asks for here. */
  private Tempo charted() {
    return current.map(bar -> bar.music().tempo()).orElseGet(() -> barAt(here()).tempo());
  }

  private Tempo tempo() {
    return TempoLine.played(charted(), course.scale());
  }

  private Playhead.Stretch stretch(PlannedBar bar) {
    return new Playhead.Stretch(
        line.nanosAt(bar.start()),
        bar.lap(),
        bar.bar(),
        1,
        bar.music().meter().beatsPerBar(),
        bar.beatNanos(line.quarterAt(bar.start())));
  }

  /** Tells the playhead how it goes on from here. */
  private void showMovement() {
    Playhead.Stretch here = playhead.stretchAt(horizon);
    current.ifPresent(
        bar ->
            playhead.enter(
                new Playhead.Stretch(
                    horizon,
                    here.lap(),
                    here.bar(),
                    here.beat(),
                    here.beats(),
                    bar.beatNanos(line.quarterAt(bar.start())))));
    upcoming.ifPresent(bar -> playhead.enter(stretch(bar)));
  }

  private static Playhead.Stretch standing(Playhead.Stretch s) {
    return new Playhead.Stretch(s.from(), s.lap(), s.bar(), s.beat(), s.beats(), 0);
  }

  private void tellChanges(Sink sink) {
    Status now = makeStatus();
    if (!now.equals(status)) {
      status = now;
      sink.tell(new Moment.Changed(now));
    }
  }

  private Status makeStatus() {
    return new Status(
        motion,
        tempo(),
        route.loop(),
        current.map(bar -> bar.course().keyShift()).orElse(course.keyShift()),
        course.keyWalk(),
        mixer.muted(),
        mixer.levels(),
        mixer.volume(),
        metronome,
        silentBars,
        course.ramp());
  }
}

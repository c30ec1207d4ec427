package hingetone.sequencer;

import hingetone.midi.MidiNote;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Plans the bars, one at a time: which comes next, with what music, at what tempo, in what keys.
 *
 * <p>The bar being played and, shortly before its bar line, the next are known. The next may be
 * taken back as long as nothing of it sounds.
 */
final class BarPlanner {
  private final ReadyLaps laps;
  private final TempoLine line;
  private final BarOrder route;
  private final Beats lapLength;
  private Command.SilentBars silentBars = Command.SilentBars.NONE;
  private PassChanges course = PassChanges.START;
  private Optional<PlannedBar> current = Optional.empty();
  private Optional<PlannedBar> upcoming = Optional.empty();
  private Beats end = Beats.ZERO;
  private int plans;

  /**
   * A planner that stands at the top of the form.
   *
   * @param line learns the tempo of each bar
   */
  BarPlanner(ReadyLaps laps, PlaySetup setup, TempoLine line) {
    this.laps = laps;
    this.line = line;
    Lap form = laps.first();
    this.route = new BarOrder(form, setup);
    this.lapLength = form.length();
  }

  /** Up to here bars are planned, in quarter notes played. */
  Beats end() {
    return end;
  }

  Optional<PlannedBar> current() {
    return current;
  }

  Optional<PlannedBar> upcoming() {
    return upcoming;
  }

  PassChanges course() {
    return course;
  }

  Command.SilentBars silentBars() {
    return silentBars;
  }

  Optional<Command.Loop> loop() {
    return route.loop();
  }

  /** Where it ends; empty for no end. */
  Optional<Status.End> ending() {
    return route.end();
  }

  /** A number for something that comes after the bars planned so far. */
  int nextPlan() {
    return ++plans;
  }

  /** Whether no bar comes after those planned. */
  boolean isOver() {
    return route.isOver();
  }

  /** Plans the next bar. */
  PlannedBar take() {
    PassChanges before = course;
    BarOrder.Step step = mustWait() ? route.takeNext() : route.take();
    laps.playing(route.lapOf(step.bar()));
    Lap.Bar music = barAt(step.bar());
    if (step.again()) {
      course = course.again(music.tempo());
    } else if (course.passes() == 0 && step.bar() >= 1) {
      course = course.firstPass();
    }
    line.enter(end, music.tempo(), music.meter(), course.scale());
    PlannedBar next =
        new PlannedBar(
            nextPlan(),
            step,
            step.bar() < 1 ? 0 : route.lapOf(step.bar()),
            music,
            end,
            course,
            before,
            silentBars.isSilent(step.bar()),
            step.bar() < 1 && laps.first().countIn().stream().allMatch(b -> b.notes().isEmpty()));
    end = next.end();
    upcoming = Optional.of(next);
    return next;
  }

  /** Whether a jump out of the music waits for its lap; from where the music stands it does not. */
  private boolean mustWait() {
    OptionalInt target = route.target();
    return current.isPresent()
        && target.isPresent()
        && laps.lap(route.lapOf(target.getAsInt())).isEmpty();
  }

  /** Notes of the next lap that start in the bar planned last. */
  List<MidiNote> pickups(PlannedBar bar) {
    boolean leads = route.isLastOfLap(bar.bar()) && route.goesOn() && !route.isOver();
    return leads ? laps.lap(bar.lap() + 1).map(Lap::pickups).orElse(List.of()) : List.of();
  }

  /** Where a bar starts, in quarter notes from the first bar 1. */
  Beats fromTop(PlannedBar bar) {
    return bar.music().start().plus(lapLength.times(bar.lap() - 1L));
  }

  /** A planned bar begins. */
  void begin(PlannedBar bar) {
    current = Optional.of(bar);
    upcoming = upcoming.filter(b -> b != bar);
  }

  /** Takes the coming bar back: it will be planned anew, so that changes reach it. */
  void takeBack() {
    upcoming.ifPresent(
        bar -> {
          end = bar.start();
          course = bar.before();
          route.giveBack();
        });
    upcoming = Optional.empty();
  }

  /** Nothing is planned any more, and the music stands at a bar. */
  void standAt(int bar) {
    current = Optional.empty();
    upcoming = Optional.empty();
    route.goTo(bar);
  }

  /** Stands at the top; passes are counted anew. */
  void standAtTop() {
    course = course.atTop();
    standAt(route.top());
  }

  /** Goes to a bar at the next bar line. */
  void goTo(int bar) {
    route.goTo(bar);
  }

  /** Whether a jump has been asked for and not been made. */
  boolean jumps() {
    return route.target().isPresent();
  }

  /**
   * Makes a change of the order of bars, of their keys or of their silence.
   *
   * @return whether the command was one of these
   */
  boolean obey(Command command) {
    if (command instanceof Command.Loop c) {
      route.setLoop(Optional.of(c));
    } else if (command instanceof Command.Unloop) {
      route.setLoop(Optional.empty());
    } else if (command instanceof Command.LoopCrossing c) {
      route.nextCrossing(here()).ifPresent(bar -> route.setLoop(Optional.of(c.around(bar))));
    } else if (command instanceof Command.SilentBars c) {
      silentBars = c;
    } else if (command instanceof Command.StepKey c) {
      course = course.withKeyStep(c.semitones());
    } else if (command instanceof Command.KeyWalk c) {
      course = course.withKeyWalk(c.semitones());
    } else {
      return false;
    }
    return true;
  }

  /** Another tempo by hand here; sections with another tempo keep their ratio. */
  void retune(Tempo tempo) {
    course = course.withScale(TempoLine.scale(tempo, charted()));
  }

  void ramp(Command.Ramp ramp) {
    course = course.withRamp(ramp, charted());
  }

  /** The bar being played or, standing, the one that play begins with. */
  int here() {
    return current.map(PlannedBar::bar).orElse(target());
  }

  /** The bar asked for, else the top. */
  int target() {
    return route.target().orElse(route.top());
  }

  /** The next place of a section in this lap, else its first. */
  Optional<Integer> sectionStart(String name) {
    return route.sectionStart(name, here()).stream().boxed().findFirst();
  }

  /** The lap a bar belongs to, 0 for the count-in. */
  int lapOf(int bar) {
    return bar < 1 ? 0 : route.lapOf(bar);
  }

  Lap.Bar barAt(int bar) {
    return route.bar(laps.nearest(route.lapOf(bar)), bar);
  }

  /** The tempo that the chart asks for here. */
  private Tempo charted() {
    return current.map(bar -> bar.music().tempo()).orElseGet(() -> barAt(here()).tempo());
  }

  /** The tempo that is played here. */
  Tempo tempo() {
    return TempoLine.played(charted(), course.scale());
  }

  /** How far the keys that sound lie from the chart's, in semitones. */
  int keyShift() {
    return current.map(bar -> bar.course().keyShift()).orElse(course.keyShift());
  }
}

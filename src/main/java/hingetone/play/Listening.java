package hingetone.play;

import hingetone.chart.Form;
import hingetone.midi.Received;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.plan.Speaker;
import hingetone.review.LineWay;
import hingetone.review.LiveWords;
import hingetone.screen.Message;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status.Motion;
import hingetone.take.PlacedNote;
import hingetone.take.PlayedBars.Place;
import hingetone.take.TakeEvent;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Clock;
import hingetone.time.Meter;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Listens to a player on a MIDI instrument: tells the screen which notes sound, and after a landing
 * or a line between two keys how it was, a beat later. Whatever it is told it does on a thread of
 * its own, one thing after the other; who tells it never waits.
 */
final class Listening {
  /** What is judged lies within so many bars. */
  private static final int KEPT_BARS = 8;

  /** A landing is spoken of where something was played so many beats before it, or at it. */
  private static final int PLAYED_BEATS = 4;

  private static final int PRESSED = 64;

  private final Form form;
  private final Supplier<Plan> plan;
  private final TakeKeeper takes;
  private final Clock clock;
  private final Executor thread;
  private final Consumer<Message> screen;
  private final HeardNotes heard;
  private Set<Integer> sounding = Set.of();

  /** Up to where landings and lines have been judged, in quarter notes from bar 1. */
  private double judged = Double.NaN;

  /**
   * For a form.
   *
   * @param plan who speaks when
   * @param takes keeps what is played
   * @param screen gets the messages
   */
  Listening(
      Form form,
      Supplier<Plan> plan,
      TakeKeeper takes,
      Clock clock,
      Executor thread,
      Consumer<Message> screen) {
    this.form = form;
    this.plan = plan;
    this.takes = takes;
    this.clock = clock;
    this.thread = thread;
    this.screen = screen;
    this.heard = new HeardNotes(form, KEPT_BARS);
  }

  /** A message of the instrument, or of a pedal. */
  void play(Received message) {
    thread.execute(
        () -> {
          takes.add(new TakeEvent.Sent(message), message.nanos());
          pedal(message);
          heard.take(message);
          tellSounding(message.nanos());
        });
  }

  /** Something that happened to the band or to the instrument. */
  void hear(SequencerEvent event) {
    thread.execute(() -> note(event));
  }

  /** A beat is heard, in quarter notes from bar 1. */
  void beat(Beats now) {
    long nanos = clock.nanos();
    thread.execute(() -> judge(now.toDouble(), nanos));
  }

  private void pedal(Received message) {
    if (message.command() == 0xB0 && message.second() >= PRESSED) {
      screen.accept(new Message.Pedal("cc " + message.first(), message.nanos()));
    } else if (message.command() == 0xC0) {
      screen.accept(new Message.Pedal("program " + message.first(), message.nanos()));
    }
  }

  private void note(SequencerEvent event) {
    long moment = clock.nanos();
    if (event instanceof SequencerEvent.BarLine bar) {
      takes.add(new TakeEvent.Bar(bar.bar(), bar.keyShift()), bar.nanos());
    } else if (event instanceof SequencerEvent.Beat beat) {
      int number = (int) beat.position().beat().floor();
      takes.add(new TakeEvent.Beat(beat.nanos(), number), beat.nanos());
    } else if (event instanceof SequencerEvent.Changed changed
        && changed.status().motion() == Motion.PAUSED) {
      takes.add(new TakeEvent.Pause(), moment);
    } else if (event instanceof SequencerEvent.Lost) {
      takes.add(new TakeEvent.Lost(moment), moment);
    }
    heard.hear(event, moment);
    tellSounding(moment);
  }

  private void tellSounding(long nanos) {
    Set<Integer> now = heard.sounding(nanos);
    if (!now.equals(sounding)) {
      sounding = now;
      screen.accept(new Message.Sounding(now));
    }
  }

  /** Speaks of what has become due since the beat before, but not of what was jumped over. */
  private void judge(double now, long nanos) {
    Optional<Place> here = heard.at(nanos);
    boolean goesOn = now > judged && now - judged < 4;
    double from = goesOn ? judged : now;
    judged = now;
    if (here.isEmpty() || here.get().bar().number() < 1) {
      return;
    }
    List<PlacedNote> played = heard.placed(here.get(), nanos);
    if (!played.isEmpty()) {
      line(here.get(), from, now, played)
          .or(() -> landing(here.get(), from, now, played))
          .ifPresent(screen);
    }
  }

  /** A line between two keys is told of a beat after it. */
  private Optional<Message> line(Place here, double from, double now, List<PlacedNote> played) {
    int bar = here.bar().number();
    Form.Bar after = form.bar(bar);
    Form.Bar before = form.bar(bar - 1);
    double line = form.startOf(bar).toDouble();
    double beat = after.meter().beatLength().toDouble();
    boolean changes = bar > 1 && !after.key().equals(before.key());
    if (!changes || !isDue(line + beat, from, now) || !plays(played, line, beat)) {
      return Optional.empty();
    }
    double into = form.startOf(bar - 1).toDouble();
    double first = form.startOf(Math.max(1, bar - 5)).toDouble();
    LineWay way = LineWay.of(new LineWay.Line(line, into, first, beat), played);
    Key key = after.key().shifted(here.bar().keyShift());
    return Optional.of(new Message.Verdict(LiveWords.line(way, key), Optional.empty()));
  }

  /** A landing is told of as soon as it cannot come any more. */
  private Optional<Message> landing(Place here, double from, double now, List<PlacedNote> played) {
    int lap = form.lapOf(here.bar().number());
    for (Prompt prompt : plan.get().promptsOfLap(Math.max(1, lap))) {
      Form.Bar bar = form.bar(prompt.landOn().bar());
      Meter meter = bar.meter();
      double place = form.quarters(prompt.landOn()).toDouble();
      double beat = meter.beatLength().toDouble();
      boolean players = !prompt.isRest() && prompt.by() == Speaker.PLAYER;
      if (players && isDue(place + LiveWords.REACH * beat, from, now)) {
        Key key = bar.key().shifted(here.bar().keyShift());
        double beatMs = here.nanosPerBeat() / 1e6;
        return plays(played, place, beat)
            ? Optional.of(
                new Message.Verdict(
                    LiveWords.landing(place, beat, beatMs, key, played),
                    Optional.of(LiveWords.isOnPlace(place, beat, beatMs, played))))
            : Optional.empty();
      }
    }
    return Optional.empty();
  }

  private static boolean isDue(double place, double from, double now) {
    return place > from && place <= now;
  }

  private static boolean plays(List<PlacedNote> played, double place, double beat) {
    return played.stream().anyMatch(n -> n.end() >= place - PLAYED_BEATS * beat);
  }
}

package hingetone.screen.view;

import hingetone.chart.ChartBar.Slot;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.Leave;
import hingetone.plan.Prompt;
import hingetone.screen.BarsAhead;
import hingetone.screen.ChartFacts.Crossing;
import hingetone.screen.ChartFacts.Fit;
import hingetone.screen.State;
import hingetone.sequencer.Command;
import hingetone.theory.Chord;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What a state means right now: the chord, what comes and when, whose turn it is. Counts are whole
 * beats of the beat that is sounding, so that they change with the beat and not between.
 */
final class Outlook {
  /** How far ahead a chord or a crossing is looked for, in bars. */
  private static final int BARS_AHEAD = 400;

  /** Of a chord's notes, those that a phrase comes to rest on first. */
  private static final int STRONG_TONES = 2;

  static final String NO_CHORD = "N.C.";

  private final State state;
  private final Form form;
  private final Position position;
  private final Bar bar;
  private final Map<Integer, List<Prompt>> turnsFrom = new HashMap<>();

  Outlook(State state) {
    this.state = state;
    this.form = state.facts().form();
    this.position = state.position();
    this.bar = form.bar(position.bar());
  }

  Position position() {
    return position;
  }

  Bar bar() {
    return bar;
  }

  Meter meter() {
    return bar.meter();
  }

  /** The beat that sounds, from 1. */
  int beat() {
    return (int) position.beat().floor();
  }

  /** The beat that sounds, in quarter notes from bar 1. */
  private Beats beatNow() {
    return form.startOf(position.bar()).plus(meter().toQuarters(Beats.of(beat() - 1L)));
  }

  /** The chord that holds now; while counting in the chord of bar 1. */
  String chord() {
    return name(slot());
  }

  private Slot slot() {
    return state.countsIn() ? bar.chords().chords().get(0) : bar.slotAt(position.beat());
  }

  static String name(Slot slot) {
    return slot.chord().map(Chord::symbol).orElse(NO_CHORD);
  }

  /** What fits over the chord that holds now. */
  Fit fit() {
    return state.facts().fitAt(position);
  }

  /** A chord to come and when, in quarter notes from the beat that sounds. */
  record Coming(String chord, Beats until) {}

  /** The changes of chord to come, the nearest first; the first chord itself while counting in. */
  List<Coming> coming(int most) {
    List<Coming> found = new ArrayList<>();
    String last = state.countsIn() ? "" : chord();
    Beats barStart = form.startOf(position.bar()).minus(beatNow());
    int number = position.bar();
    for (int i = 0; i < BARS_AHEAD && found.size() < most; i++) {
      Bar in = form.bar(number);
      for (Slot slot : number < 1 ? List.<Slot>of() : in.chords().chords()) {
        Beats until = barStart.plus(in.meter().toQuarters(slot.beat().minus(Beats.ONE)));
        boolean past = i == 0 && !slot.beat().isAfter(position.beat());
        if (!past && !name(slot).equals(last) && found.size() < most) {
          last = name(slot);
          found.add(new Coming(last, until));
        }
      }
      if (BarsAhead.isLast(state, number)) {
        break;
      }
      barStart = barStart.plus(in.meter().barLength());
      number = BarsAhead.after(state, number);
    }
    return found;
  }

  /** A crossing to come and when, in quarter notes from the beat that sounds. */
  record Nearing(Crossing crossing, int atBar, Beats until) {}

  /** The next change of key on the way; empty where none comes. */
  Optional<Nearing> nearing() {
    return nearing(state.facts()::crossingInto);
  }

  /** The next change of key or way home; empty where neither comes. */
  Optional<Nearing> nextLine() {
    return nearing(state.facts()::lineInto);
  }

  private Optional<Nearing> nearing(IntFunction<Optional<Crossing>> into) {
    Beats until = form.startOf(position.bar()).minus(beatNow());
    int number = position.bar();
    int most = Math.min(BARS_AHEAD, form.bars().size() + 8);
    for (int i = 0; i <= most && !BarsAhead.isLast(state, number); i++) {
      until = until.plus(form.bar(number).meter().barLength());
      int next = BarsAhead.after(state, number);
      Optional<Crossing> crossing = into.apply(next);
      if (next > 1 && next == number + 1 && crossing.isPresent()) {
        return Optional.of(new Nearing(crossing.get(), next, until));
      }
      number = next;
    }
    return Optional.empty();
  }

  /** The crossing just made, while its first bar lasts. */
  Optional<Crossing> crossed() {
    return position.bar() > 1 ? state.facts().crossingInto(position.bar()) : Optional.empty();
  }

  /** Whole bars of this meter, rounded up, until something. */
  long bars(Beats until) {
    return until.dividedBy(meter().barLength()).ceil();
  }

  /** {@code in 2 bars 1 beat}. */
  String in(Beats until) {
    long whole = until.dividedBy(meter().barLength()).floor();
    Beats rest = meter().toBeats(until.modulo(meter().barLength()));
    String bars = whole == 0 ? "" : whole + (whole == 1 ? " bar" : " bars");
    String beats =
        rest.isZero()
            ? ""
            : Signs.of(state).count(rest) + (rest.isAfter(Beats.ONE) ? " beats" : " beat");
    return "in " + (bars + " " + beats).strip();
  }

  /** Beats of this meter from the beat that sounds until a position. */
  Beats beatsUntil(Position there) {
    return meter().toBeats(form.quarters(there).minus(beatNow()));
  }

  /**
   * What a phrase lands on, the likeliest first: the note of the way over its line, else the root
   * and the third of the chord there, or what it has in their place; none over no chord.
   */
  List<String> landing(Prompt turn) {
    int bar = turn.landOn().bar();
    Optional<Crossing> crossing = state.facts().crossingInto(bar);
    boolean onLine = turn.landOn().beat().equals(Beats.ONE);
    Optional<String> way =
        turn.crossing()
            .filter(leave -> onLine)
            .flatMap(leave -> crossing.flatMap(c -> leave == Leave.RUN ? c.reached() : c.held()));
    Optional<Chord> chord = form.bar(bar).chordAt(turn.landOn().beat());
    return way.map(List::of)
        .orElseGet(
            () ->
                chord.stream()
                    .flatMap(c -> c.notes().stream().limit(STRONG_TONES))
                    .map(note -> note.simplified().toString())
                    .toList());
  }

  /** Whether the line that a turn goes over is still to come. */
  boolean isBeforeLine(Prompt turn) {
    int last = Math.max(turn.landOn().bar(), turn.stopBy().bar());
    return IntStream.rangeClosed(position.bar() + 1, last)
        .anyMatch(bar -> state.facts().crossingInto(bar).isPresent());
  }

  /**
   * A bar as it is numbered on the screen, in its section, whose name is there if it is another.
   */
  String barName(int number) {
    Bar there = form.bar(number);
    boolean here = there.place() == bar.place();
    return "bar " + there.inSection() + (here ? "" : " of " + there.section().name());
  }

  /** The turn that is on. */
  Optional<Prompt> turn() {
    return turns(position.bar()).stream().filter(turn -> turn.covers(position)).findFirst();
  }

  /** The turn that comes next on the way; after a loop's end its first. */
  Optional<Prompt> nextTurn() {
    Stream<Prompt> later =
        turns(position.bar()).stream().filter(t -> t.speakFrom().compareTo(position) > 0);
    Optional<Command.Loop> loop = state.status().loop();
    if (loop.isEmpty()) {
      return later.findFirst();
    }
    boolean inside = BarsAhead.isLooped(state, position.bar());
    Position end = Position.of(loop.get().lastBar() + 1, 1);
    Position start = Position.of(loop.get().firstBar(), 1);
    Optional<Prompt> before =
        later.filter(t -> !inside || t.landOn().compareTo(end) < 0).findFirst();
    return before.isPresent()
        ? before
        : turns(start.bar()).stream().filter(t -> t.landOn().compareTo(start) >= 0).findFirst();
  }

  /** The turns of a bar's lap and of the next, whose first may start in it. */
  List<Prompt> turns(int ofBar) {
    return turnsFrom.computeIfAbsent(Math.max(1, form.lapOf(ofBar)), this::turnsFrom);
  }

  private List<Prompt> turnsFrom(int lap) {
    return Stream.of(lap, lap + 1)
        .flatMap(l -> state.facts().plan().promptsOfLap(l).stream())
        .filter(turn -> !BarsAhead.isEnding(state, turn.landOn().bar()))
        .toList();
  }

  /** Whether a turn to come lies behind the end of a loop, so that its count means nothing. */
  boolean isBehind(Prompt turn) {
    return turn.speakFrom().compareTo(position) < 0;
  }
}

package hingetone.plan;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The plan of an exchange over a form: a prompt for every phrase and every rest, lap after lap
 * without end. The same chart and seed give the same plan.
 *
 * <pre>{@code
 * Plan plan = Plan.of(chart, Form.of(chart));
 * plan.promptsOfLap(2).get(0).speakFrom();   // in the last bar of lap 1
 * }</pre>
 */
public final class Plan {
  private final Form form;
  private final List<LapTurn> turns;
  private final TurnPlaces places;
  private final CrossingChoice leaving;
  private final Set<Role> machine;

  private Plan(
      Form form,
      List<LapTurn> turns,
      TurnPlaces places,
      CrossingChoice leaving,
      Set<Role> machine) {
    this.form = form;
    this.turns = turns;
    this.places = places;
    this.leaving = leaving;
    this.machine = machine;
  }

  /** The plan of a chart over its form; every phrase is the player's. */
  public static Plan of(Chart chart, Form form) {
    List<LapTurn> turns = LapTurns.of(form, chart.seed());
    Beats countIn = form.bars().get(0).meter().barLength().times(chart.countIn());
    return new Plan(
        form,
        turns,
        new TurnPlaces(turns, form.length(), countIn),
        new CrossingChoice(form, chart.seed()),
        Set.of());
  }

  /** The same plan with all phrases of the given roles played by the machine. */
  public Plan withMachine(Set<Role> roles) {
    return new Plan(form, turns, places, leaving, Set.copyOf(roles));
  }

  /** The form it plans for. */
  public Form form() {
    return form;
  }

  /** The prompts that land in a lap, 1 and up, in order. */
  public List<Prompt> promptsOfLap(int lap) {
    if (lap < 1) {
      throw new IllegalArgumentException("laps are counted from 1, not " + lap);
    }
    int first = Math.multiplyExact(lap - 1, turns.size());
    return IntStream.range(first, first + turns.size()).mapToObj(this::nth).toList();
  }

  /** The prompt with an index, 1 and up. */
  public Prompt prompt(int index) {
    if (index < 1) {
      throw new IllegalArgumentException("prompts are counted from 1, not " + index);
    }
    return nth(index - 1);
  }

  /** The first prompt that starts after a position, in whatever lap. */
  public Prompt nextAfter(Position position) {
    return near(position)
        .filter(prompt -> prompt.speakFrom().compareTo(position) > 0)
        .findFirst()
        .orElseThrow();
  }

  /**
   * How the line before a bar is gone over; empty where no phrase goes over it, or the key stays.
   *
   * @param bar the bar, counted on through the laps
   */
  public Optional<Leave> wayInto(int bar) {
    Position line = Position.of(bar, 1);
    return near(Position.of(Math.max(1, bar - 1), 1))
        .filter(p -> p.speakFrom().compareTo(line) < 0 && p.stopBy().compareTo(line) >= 0)
        .flatMap(prompt -> prompt.crossing().stream())
        .findFirst();
  }

  /** All prompts from the lap of a position on: its own, then enough to hold the next one. */
  private Stream<Prompt> near(Position position) {
    int lap = Math.max(1, form.lapOf(position.bar()));
    return Stream.of(lap, lap + 1, lap + 2).flatMap(l -> promptsOfLap(l).stream());
  }

  /** The prompt counted from 0. */
  private Prompt nth(int i) {
    LapTurn turn = places.turn(i);
    int lap = i / turns.size() + 1;
    Optional<Integer> again = returning(i);
    return new Prompt(
        i + 1,
        lap,
        turn.first().section().name(),
        turn.role(),
        machine.contains(turn.role()) ? Speaker.MACHINE : Speaker.PLAYER,
        turn.role() == Role.REPLY ? lastStatement(i) : Optional.empty(),
        again,
        again.map(index -> ReturnEnding.DIFFERENT),
        form.position(places.start(i)),
        form.position(places.landing(i)),
        form.position(places.end(i)),
        crossing(i, lap));
  }

  /** The index of the statement that comes back in a turn. */
  private Optional<Integer> returning(int i) {
    if (places.turn(i).role() != Role.STATEMENT) {
      return Optional.empty();
    }
    int lapStart = i - i % turns.size();
    return switch (places.turn(i).from()) {
      case NEW -> Optional.empty();
      case LAST -> lastStatement(i);
      case OPENING -> firstStatement(lapStart).filter(index -> index <= i);
      case LAST_LAP -> firstStatement(lapStart - turns.size());
    };
  }

  /** The index of the first statement from a turn on; empty before the first lap. */
  private Optional<Integer> firstStatement(int from) {
    return from < 0 ? Optional.empty() : statements(IntStream.range(from, from + turns.size()));
  }

  /** The index of the last statement before a turn, at most a lap back. */
  private Optional<Integer> lastStatement(int i) {
    return statements(IntStream.rangeClosed(1, Math.min(i, turns.size())).map(back -> i - back));
  }

  private Optional<Integer> statements(IntStream order) {
    return order
        .filter(i -> places.turn(i).role() == Role.STATEMENT)
        .mapToObj(i -> i + 1)
        .findFirst();
  }

  /**
   * A crossing belongs to the phrase that goes over its line: the one that lands on it, its pickup
   * before it, or else the one that rings over it. One that starts on the line goes over nothing.
   */
  private Optional<Leave> crossing(int i, int lap) {
    if (places.opensOnLine(i)) {
      if (places.start(i).equals(places.landing(i))) {
        return Optional.empty();
      }
      return leaving.wayInto(places.turn(i).place(), lap);
    }
    int lapOfNext = (i + 1) / turns.size() + 1;
    return places.ringsOver(i)
        ? leaving.wayInto(places.turn(i + 1).place(), lapOfNext)
        : Optional.empty();
  }
}

package hingetone.play;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn.Role;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.screen.ChartFacts;
import hingetone.screen.FactFinder;
import hingetone.sequencer.LapSource;
import hingetone.time.Position;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * What is played and shown: a chart in a groove, with the example phrases chosen.
 *
 * @param groove the groove's name
 * @param music makes the laps, when it is ready; the picture does not wait for it
 * @param shown which example phrases the machine plays
 * @param shownFrom the place from which the next crossing is counted
 */
public record Arrangement(
    Chart chart,
    boolean leftHanded,
    String groove,
    CompletableFuture<Music> music,
    Optional<ExampleChoice> shown,
    Position shownFrom) {

  /**
   * A chart's band.
   *
   * @param groove its groove's name
   * @param laps makes its laps
   * @param next the same chart in the next groove that fits; empty where there is no other
   */
  public record Music(String groove, Laps laps, Supplier<Optional<Music>> next) {}

  /** Makes a band's laps, with example phrases where some are shown. */
  public interface Laps {
    /**
     * The laps.
     *
     * @param shown which example phrases are played
     * @param from the place from which the next crossing is counted
     * @param position the fret that the hand stays around; empty where it is free
     */
    LapSource of(Optional<ExampleChoice> shown, Position from, Optional<Integer> position);
  }

  /** A chart from its count-in on. */
  public static Arrangement of(
      Chart chart,
      boolean leftHanded,
      String groove,
      CompletableFuture<Music> music,
      Optional<ExampleChoice> shown) {
    Position top = Position.of(1 - chart.countIn(), 1);
    return new Arrangement(chart, leftHanded, groove, music, shown, top);
  }

  /** With other example phrases, the next crossing counted from a place. */
  Arrangement showing(Optional<ExampleChoice> other, Position from) {
    return new Arrangement(chart, leftHanded, groove, music, other, from);
  }

  /** With the hand around a fret, or free. */
  Arrangement at(Optional<Integer> position) {
    Chart there = chart.withPosition(position);
    return new Arrangement(there, leftHanded, groove, music, shown, shownFrom);
  }

  /** In the next groove that fits; empty where there is no other. Takes its time. */
  Optional<Arrangement> inNextGroove() {
    return music
        .join()
        .next()
        .get()
        .map(
            next ->
                new Arrangement(
                    chart,
                    leftHanded,
                    next.groove(),
                    CompletableFuture.completedFuture(next),
                    shown,
                    shownFrom));
  }

  /** The laps of the band, with the example phrases chosen; waits for the music. */
  LapSource laps() {
    return music.join().laps().of(shown, shownFrom, chart.position());
  }

  /** What can be said of the chart at once. */
  ChartFacts sketch() {
    return FactFinder.sketch(chart.title(), groove, board(), Plan.of(chart, Form.of(chart)));
  }

  /** All that can be said of the chart, its keys shifted by semitones. */
  ChartFacts facts(int shift) {
    Chart sounding = shift == 0 ? chart : chart.shifted(shift);
    Form bars = Form.of(sounding);
    Ground ground = Ground.of(bars, board(), chart.position());
    Plan plan = Plan.of(sounding, bars).withMachine(machine());
    return FactFinder.of(chart.title(), groove, ground, plan);
  }

  private Fretboard board() {
    return new Fretboard(chart.tuning(), chart.capo(), Fretboard.USUAL_FRETS, leftHanded);
  }

  /** Who speaks is shown as the machine where it plays an example of all such phrases. */
  private Set<Role> machine() {
    return Set.of(Role.STATEMENT, Role.REPLY).stream()
        .filter(role -> shown.filter(which -> which.showsAll(role)).isPresent())
        .collect(Collectors.toSet());
  }
}

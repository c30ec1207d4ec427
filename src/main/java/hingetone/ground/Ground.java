package hingetone.ground;

import hingetone.chart.Form;
import hingetone.ground.scales.ChordContext;
import hingetone.ground.scales.ChordContexts;
import hingetone.ground.scales.FittingScale;
import hingetone.ground.scales.ScaleChoice;
import hingetone.ground.ways.CommonTones;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.CrossingLine;
import hingetone.ground.ways.CrossingLine.Side;
import hingetone.ground.ways.HandRoute;
import hingetone.ground.ways.HoldFinder;
import hingetone.ground.ways.NeckScales;
import hingetone.ground.ways.RunFinder;
import hingetone.ground.ways.StayFinder;
import hingetone.ground.ways.Turnaround;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.theory.Chord;
import hingetone.theory.Key;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What lies under the player's fingers through a form: the scales that fit each chord, the shape
 * for each, and the ways over every crossing and turnaround. Computed once, then only read.
 */
public final class Ground {
  private final Form form;
  private final Fretboard fretboard;
  private final Optional<Integer> position;
  private final Map<Scale, List<Shape>> shapes = new HashMap<>();
  private final Map<ChordContext, List<FittingScale>> ranked = new HashMap<>();
  private final List<List<List<FittingScale>>> scales;
  private final List<List<Shape>> route;
  private final List<Crossing> crossings;
  private final List<Turnaround> turnarounds;

  private Ground(Form form, Fretboard fretboard, Optional<Integer> position) {
    this.form = form;
    this.fretboard = fretboard;
    this.position = position;
    this.scales =
        ChordContexts.of(form).stream()
            .map(
                bar -> bar.stream().map(s -> ranked.computeIfAbsent(s, ScaleChoice::rank)).toList())
            .toList();
    this.route = findRoute();
    this.crossings = findCrossings();
    this.turnarounds = findTurnarounds();
  }

  /** The ground of a form under a hand that is free. */
  public static Ground of(Form form, Fretboard fretboard) {
    return of(form, fretboard, Optional.empty());
  }

  /**
   * The ground of a chart's form.
   *
   * @param form the form
   * @param fretboard the neck it is played on
   * @param position the fret that the hand stays around; empty where it is free
   */
  public static Ground of(Form form, Fretboard fretboard, Optional<Integer> position) {
    return new Ground(form, fretboard, position);
  }

  /** The fret that the hand stays around; empty where it is free. */
  public Optional<Integer> position() {
    return position;
  }

  public Fretboard fretboard() {
    return fretboard;
  }

  public Form form() {
    return form;
  }

  /**
   * The scales that fit the chord at a place, the best first; never empty.
   *
   * @param bar the bar, in whatever lap
   * @param beat the beat, 1 being the bar line
   */
  public List<FittingScale> scalesAt(int bar, Beats beat) {
    Form.Bar there = form.bar(bar);
    return scales.get(there.number() - 1).get(slot(there, beat));
  }

  /**
   * The shape under the hand at a place, which stays over passing chords; all of a lap's keep the
   * hand's travel through it least.
   */
  public Shape neckAt(int bar, Beats beat) {
    Form.Bar there = form.bar(bar);
    return route.get(there.number() - 1).get(slot(there, beat));
  }

  /** The shape of the best scale at a place that lies nearest to the one under the hand. */
  public Shape shapeAt(int bar, Beats beat) {
    Shape hand = neckAt(bar, beat);
    Scale best = scalesAt(bar, beat).get(0).scale();
    return hand.scale().equals(best) ? hand : nearest(best, hand);
  }

  /** The changes of key through a lap, the seam to the next lap last. */
  public List<Crossing> crossings() {
    return crossings;
  }

  /** The dominants that lead back to a tonic at the end of a section, the seam last. */
  public List<Turnaround> turnarounds() {
    return turnarounds;
  }

  /**
   * The first crossing whose line comes after a position, its bar counted on through the laps;
   * empty when the form never changes key.
   */
  public Optional<Crossing> nextCrossing(Position position) {
    int bars = form.bars().size();
    int lapStart = position.bar() < 1 ? 0 : (position.bar() - 1) / bars * bars;
    return crossings.stream()
        .flatMap(
            c ->
                java.util.stream.Stream.of(c.atBar() + lapStart, c.atBar() + lapStart + bars)
                    .map(c::atBar))
        .filter(c -> c.atBar() > position.bar())
        .min(Comparator.comparingInt(Crossing::atBar));
  }

  /** The crossing that a phrase goes over which lands at a position: on its line, or before it. */
  public Crossing crossingOf(Position landing) {
    return nextCrossing(Position.of(landing.bar() - 1, 1)).orElseThrow();
  }

  /** Every shape of a scale on this neck. */
  public List<Shape> shapes(Scale scale) {
    return shapes.computeIfAbsent(scale, s -> Shapes.of(fretboard, s));
  }

  /** A scale's shape that lies nearest to another shape. */
  public Shape nearest(Scale scale, Shape hand) {
    return shapes(scale).stream()
        .min(Comparator.comparingDouble(s -> HandRoute.travel(fretboard, hand, s)))
        .orElseThrow();
  }

  private static int slot(Form.Bar bar, Beats beat) {
    return bar.chords().chords().indexOf(bar.slotAt(beat));
  }

  private List<List<Shape>> findRoute() {
    List<Scale> stages = new ArrayList<>();
    List<List<Integer>> stageOf = new ArrayList<>();
    for (List<Scale> bar : NeckScales.of(form, scales)) {
      List<Integer> inBar = new ArrayList<>();
      for (Scale scale : bar) {
        if (stages.isEmpty() || !stages.get(stages.size() - 1).equals(scale)) {
          stages.add(scale);
        }
        inBar.add(stages.size() - 1);
      }
      stageOf.add(inBar);
    }
    List<Shape> found =
        HandRoute.shortest(fretboard, stages.stream().map(this::shapes).toList(), position);
    return stageOf.stream().map(bar -> bar.stream().map(found::get).toList()).toList();
  }

  private List<Crossing> findCrossings() {
    List<Crossing> found = new ArrayList<>();
    for (Form.Bar bar : form.bars()) {
      Form.Bar next = form.bar(bar.number() + 1);
      if (!next.key().equals(bar.key())) {
        found.add(crossing(bar, next));
      }
    }
    return List.copyOf(found);
  }

  private Crossing crossing(Form.Bar bar, Form.Bar next) {
    CrossingLine line = line(bar, next, bar.key(), bar.key().pentatonic(), bar.key().heptatonic());
    return new Crossing(
        bar.number() + 1,
        bar.key(),
        next.key(),
        CommonTones.of(bar.key(), next.key(), line.before().chord(), line.after().chord()),
        HoldFinder.over(line),
        RunFinder.over(line),
        StayFinder.over(line));
  }

  private List<Turnaround> findTurnarounds() {
    List<Turnaround> found = new ArrayList<>();
    for (Form.Bar bar : form.bars()) {
      Form.Bar next = form.bar(bar.number() + 1);
      Optional<Chord> last = lastChord(bar);
      if (bar.isLastOfSection()
          && last.filter(c -> c.isDominantOf(next.key().tonic())).isPresent()) {
        found.add(turnaround(bar, next, last.get()));
      }
    }
    return List.copyOf(found);
  }

  private Turnaround turnaround(Form.Bar bar, Form.Bar next, Chord dominant) {
    List<FittingScale> fitting = scales.get(bar.number() - 1).get(bar.chords().chords().size() - 1);
    CrossingLine line =
        line(bar, next, next.key(), fitting.get(0).scale(), next.key().heptatonic());
    return new Turnaround(
        bar.number() + 1,
        barsOf(dominant, bar),
        dominant,
        next.key(),
        fitting,
        HoldFinder.over(line),
        RunFinder.over(line),
        StayFinder.over(line));
  }

  /** Bars at the end of a section that a chord fills, at least the last in part. */
  private int barsOf(Chord chord, Form.Bar last) {
    int bars = 1;
    while (bars < last.inSection()
        && form.bar(last.number() - bars).chords().chords().stream()
            .allMatch(s -> s.chord().filter(chord::equals).isPresent())) {
      bars++;
    }
    return bars;
  }

  private CrossingLine line(Form.Bar bar, Form.Bar next, Key keyBefore, Scale small, Scale large) {
    List<Shape> lastShapes = route.get(bar.number() - 1);
    Shape hand = nearest(small, lastShapes.get(lastShapes.size() - 1));
    Shape handAfter = nearest(next.key().pentatonic(), route.get(next.number() - 1).get(0));
    return new CrossingLine(
        fretboard,
        bar.meter(),
        new Side(keyBefore, lastChord(bar), large, hand),
        new Side(next.key(), next.chordAt(Beats.ONE), next.key().heptatonic(), handAfter),
        shapes(next.key().pentatonic()),
        bends(bar) || bends(next));
  }

  private static boolean bends(Form.Bar bar) {
    return bar.section().isOverRiff() || bar.key().isBlues();
  }

  private static Optional<Chord> lastChord(Form.Bar bar) {
    return bar.chords().chords().get(bar.chords().chords().size() - 1).chord();
  }
}

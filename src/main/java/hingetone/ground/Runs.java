package hingetone.ground;

import hingetone.ground.Run.Kind;
import hingetone.ground.Run.Step;
import hingetone.neck.Dot;
import hingetone.neck.DoubleStop;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Finds busy ways over a line: figures walked by single frets, and scales run into the new key. */
final class Runs {
  /** Shifts of up to this many frets are walked whole, of wider ones only the last frets. */
  private static final int WALKED_WHOLE = 3;

  private static final int WALKED_LAST = 2;
  private static final int WIDEST_SHIFT = 6;
  private static final Beats HALF = Beats.of(1, 2);

  /** Notes of a scale run before the one that lands. */
  private static final int RUN_UP = 4;

  private record Rated(Run run, double score) {}

  private final Line line;

  /** Pitch classes that a run may land on. */
  private final Set<Integer> landing;

  private Runs(Line line) {
    this.line = line;
    this.landing = Home.chromas(line.after().small().notes().stream());
  }

  /** Walks with two, three and four notes, then scale runs; of each kind the best first. */
  static List<Run> over(Line line) {
    Runs runs = new Runs(line);
    List<Run> found = new ArrayList<>();
    found.addAll(best(runs.walks(runs.doubleStops(), true), 3));
    found.addAll(best(runs.walks(runs.figures(3), false), 1));
    found.addAll(best(runs.walks(runs.figures(4), false), 1));
    found.addAll(best(runs.scaleRuns(), 2));
    return found;
  }

  private static List<Run> best(List<Rated> rated, int count) {
    return rated.stream()
        .sorted(Comparator.comparingDouble(Rated::score).reversed())
        .limit(count)
        .map(Rated::run)
        .toList();
  }

  private List<List<Spot>> doubleStops() {
    return DoubleStop.all(line.before().shape()).stream()
        .filter(stop -> stop.low().string() - stop.high().string() == 1)
        .map(stop -> List.of(stop.low().spot(), stop.high().spot()))
        .toList();
  }

  /** Neighbouring notes of the shape, upwards and downwards. */
  private List<List<Spot>> figures(int size) {
    List<Spot> spots = line.before().shape().dots().stream().map(Dot::spot).toList();
    List<List<Spot>> figures = new ArrayList<>();
    for (int from = 0; from + size <= spots.size(); from++) {
      List<Spot> up = spots.subList(from, from + size);
      figures.add(up);
      figures.add(IntStream.rangeClosed(1, size).mapToObj(i -> up.get(size - i)).toList());
    }
    return figures;
  }

  private List<Rated> walks(List<List<Spot>> figures, boolean together) {
    List<Rated> walks = new ArrayList<>();
    for (List<Spot> figure : figures) {
      for (int frets = -WIDEST_SHIFT; frets <= WIDEST_SHIFT; frets++) {
        if (frets != 0 && lands(figure, frets)) {
          Run run = walk(figure, frets, together);
          walks.add(new Rated(run, score(run, frets)));
        }
      }
    }
    return walks;
  }

  private boolean lands(List<Spot> figure, int frets) {
    return figure.stream()
        .map(spot -> spot.up(frets))
        .allMatch(spot -> line.neck().has(spot) && landing.contains(chroma(spot)));
  }

  private int chroma(Spot spot) {
    return Math.floorMod(line.neck().midi(spot), 12);
  }

  private Run walk(List<Spot> figure, int frets, boolean together) {
    List<Integer> moves = moves(frets);
    Beats stepLength = stepLength(together);
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < moves.size(); i++) {
      int move = moves.get(i);
      Beats before = stepLength.times(moves.size() - 1L - i);
      steps.add(step(before, stepLength, together, figure.stream().map(s -> s.up(move)).toList()));
    }
    int low = figure.stream().mapToInt(Spot::fret).min().orElseThrow();
    double travel =
        line.neck().travel(Route.middle(line.before().shape()), low)
            + line.neck().travel(low, low + frets);
    return new Run(Kind.WALK, steps, low, low + frets, travel);
  }

  /** The frets moved to, one after the other: 0 1 2 for a whole tone, 0 3 4 5 for a fourth. */
  static List<Integer> moves(int frets) {
    int direction = Integer.signum(frets);
    int size = Math.abs(frets);
    int firstWalked = size > WALKED_WHOLE ? size - WALKED_LAST : 1;
    List<Integer> moves = new ArrayList<>(List.of(0));
    for (int fret = firstWalked; fret <= size; fret++) {
      moves.add(direction * fret);
    }
    return moves;
  }

  /**
   * Half a beat for notes struck at once, a beat for others; twice that where beats are eighths.
   */
  private Beats stepLength(boolean together) {
    Beats usual = together ? HALF : Beats.ONE;
    return line.meter().beatLength().isBefore(Beats.ONE) ? usual.times(2) : usual;
  }

  private Step step(Beats before, Beats length, boolean together, List<Spot> spots) {
    Line.Side side = before.isZero() ? line.after() : line.before();
    List<Pitch> notes = spots.stream().map(s -> side.key().spell(line.neck().midi(s))).toList();
    return new Step(before, length, together, spots, notes);
  }

  private double score(Run run, int frets) {
    Step first = run.steps().get(0);
    Step last = run.steps().get(run.steps().size() - 1);
    int shift =
        Math.floorMod(
            line.after().key().tonic().chroma() - line.before().key().tonic().chroma(), 12);
    boolean asTheKey = Math.floorMod(frets, 12) == shift;
    double high = 1 - (double) (first.spots().get(0).string() - 1) / line.neck().strings();
    return Weights.LANDS_ON_CHORD * chordShare(line.after(), last)
        + Weights.STARTS_ON_CHORD * chordShare(line.before(), first)
        + (asTheKey ? Weights.AS_THE_KEY_MOVES : 0)
        + (lands(line.after().key().tonic(), last) ? Weights.LANDS_ON_TONIC : 0)
        + Weights.HIGH_STRINGS * high
        - Weights.FRET_WALKED * Math.abs(frets);
  }

  private boolean lands(NoteName tonic, Step last) {
    return last.notes().stream().anyMatch(note -> note.name().soundsLike(tonic));
  }

  private double chordShare(Line.Side side, Step step) {
    List<Integer> tones =
        side.chord().map(Chord::notes).orElse(side.key().pentatonic().notes()).stream()
            .map(n -> n.chroma())
            .toList();
    long inside = step.spots().stream().filter(s -> tones.contains(chroma(s))).count();
    return (double) inside / step.spots().size();
  }

  /** Each note of the new shape, run up to or down to through the old scale. */
  private List<Rated> scaleRuns() {
    List<Rated> runs = new ArrayList<>();
    List<Dot> old = line.before().shape().dots();
    for (Dot goal : line.after().shape().dots()) {
      int below = (int) old.stream().filter(d -> midi(d) < midi(goal)).count();
      if (below >= RUN_UP) {
        add(runs, old.subList(below - RUN_UP, below), goal);
      }
      int above = (int) old.stream().filter(d -> midi(d) <= midi(goal)).count();
      if (above + RUN_UP <= old.size()) {
        List<Dot> up = old.subList(above, above + RUN_UP);
        add(
            runs,
            IntStream.rangeClosed(1, RUN_UP).mapToObj(i -> up.get(RUN_UP - i)).toList(),
            goal);
      }
    }
    return runs;
  }

  private void add(List<Rated> runs, List<Dot> approach, Dot goal) {
    int leap = Math.abs(midi(approach.get(RUN_UP - 1)) - midi(goal));
    int jump = Math.abs(approach.get(RUN_UP - 1).fret() - goal.fret());
    if (leap > 4 || jump > Shape.HAND) {
      return;
    }
    Beats length = stepLength(true);
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < RUN_UP; i++) {
      steps.add(
          step(length.times((long) RUN_UP - i), length, true, List.of(approach.get(i).spot())));
    }
    steps.add(step(Beats.ZERO, length, true, List.of(goal.spot())));
    int from = approach.get(0).fret();
    double travel = line.neck().travel(Route.middle(line.before().shape()), goal.fret());
    Run run = new Run(Kind.SCALE, steps, from, goal.fret(), travel);
    runs.add(new Rated(run, scaleScore(steps.get(RUN_UP), leap, jump)));
  }

  private double scaleScore(Step last, int leap, int jump) {
    return Weights.LANDS_ON_CHORD * chordShare(line.after(), last)
        + (lands(line.after().key().tonic(), last) ? Weights.LANDS_ON_TONIC : 0)
        - Weights.FRET_WALKED * (leap + jump);
  }

  private static int midi(Dot dot) {
    return dot.pitch().midi();
  }
}

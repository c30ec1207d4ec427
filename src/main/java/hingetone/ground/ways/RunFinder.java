package hingetone.ground.ways;

import hingetone.ground.scales.ImpliedKey;
import hingetone.ground.scales.Weights;
import hingetone.ground.ways.Run.Kind;
import hingetone.ground.ways.Run.Step;
import hingetone.neck.Dot;
import hingetone.neck.DoubleStop;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.theory.Chord;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** Finds busy ways over a line: figures walked by single frets, and scales run into the new key. */
public final class RunFinder {
  /** Shifts of up to this many frets are walked whole, of wider ones only the last frets. */
  private static final int WALKED_WHOLE = 3;

  private static final int WALKED_LAST = 2;

  /** Notes of a scale run before the one that lands. */
  private static final int RUN_UP = 4;

  /** Semitones from the last of them to that one. */
  private static final int WIDEST_LEAP = 4;

  /** A figure that may be walked so many frets, and how good that is. */
  private record Walk(List<Spot> figure, int frets, double score) {}

  /** Notes of the old shape and the one that they land on, and how good that is. */
  private record ScaleRun(List<Dot> approach, Dot goal, double score) {}

  private final CrossingLine line;

  /** Pitch classes that a run may land on, and those of the chords on either side. */
  private final Set<Integer> landing;

  private final Set<Integer> oldChord;
  private final Set<Integer> newChord;

  private RunFinder(CrossingLine line) {
    this.line = line;
    this.landing = ImpliedKey.chromas(line.after().small().notes().stream());
    this.oldChord = chordTones(line.before());
    this.newChord = chordTones(line.after());
  }

  private static Set<Integer> chordTones(CrossingLine.Side side) {
    return ImpliedKey.chromas(
        side.chord().map(Chord::notes).orElse(side.key().pentatonic().notes()).stream());
  }

  /** Walks with two, three and four notes, then scale runs; of each kind the best first. */
  public static List<Run> over(CrossingLine line) {
    RunFinder runs = new RunFinder(line);
    List<Run> found = new ArrayList<>();
    found.addAll(runs.walks(runs.doubleStops(), true, 3));
    found.addAll(runs.walks(runs.figures(3), false, 1));
    found.addAll(runs.walks(runs.figures(4), false, 1));
    found.addAll(runs.scaleRuns(2));
    return found;
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

  /**
   * The best walks of some figures, three frets wide at most unless the keys lie farther apart;
   * what is played is written out for those only.
   */
  private List<Run> walks(List<List<Spot>> figures, boolean together, int count) {
    int widest = Math.max(WALKED_WHOLE, Math.min(line.shift(), 12 - line.shift()));
    List<Walk> walks = new ArrayList<>();
    for (List<Spot> figure : figures) {
      for (int frets = -widest; frets <= widest; frets++) {
        if (frets != 0 && lands(figure, frets)) {
          walks.add(new Walk(figure, frets, score(figure, frets)));
        }
      }
    }
    return walks.stream()
        .sorted(Comparator.comparingDouble(Walk::score).reversed())
        .limit(count)
        .map(walk -> written(walk, together))
        .toList();
  }

  private boolean lands(List<Spot> figure, int frets) {
    return figure.stream()
        .map(spot -> spot.up(frets))
        .allMatch(spot -> line.neck().has(spot) && landing.contains(chroma(spot)));
  }

  private int chroma(Spot spot) {
    return Math.floorMod(line.neck().midi(spot), 12);
  }

  /**
   * The steps of a walk: the figure whole where it stands, a touch of it on each fret between (two
   * notes at once, or its first two, whose line the ear follows), the figure whole from the line.
   */
  private Run written(Walk walk, boolean together) {
    List<Integer> moves = moves(walk.frets);
    Beats shortest = halfABeat();
    Beats whole = together ? shortest : shortest.times(2);
    List<Step> steps = new ArrayList<>();
    steps.add(step(shortest.times(moves.size() - 2L).plus(whole), whole, together, walk.figure));
    for (int i = 1; i < moves.size() - 1; i++) {
      Beats before = shortest.times(moves.size() - 1L - i);
      steps.add(step(before, shortest, together, up(walk.figure.subList(0, 2), moves.get(i))));
    }
    steps.add(step(Beats.ZERO, whole, together, up(walk.figure, walk.frets)));
    int low = walk.figure.stream().mapToInt(Spot::fret).min().orElseThrow();
    double travel = line.reach(low) + line.neck().travel(low, low + walk.frets);
    return new Run(Kind.WALK, steps, low, low + walk.frets, travel);
  }

  private static List<Spot> up(List<Spot> figure, int frets) {
    return figure.stream().map(spot -> spot.up(frets)).toList();
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

  /** Half a beat of the meter; where its beats are eighths, a whole one. */
  private Beats halfABeat() {
    return line.meter().beatLength().isBefore(Beats.ONE) ? Beats.ONE : Beats.of(1, 2);
  }

  private Step step(Beats before, Beats length, boolean together, List<Spot> spots) {
    CrossingLine.Side side = before.isZero() ? line.after() : line.before();
    List<Pitch> notes = spots.stream().map(s -> side.key().spell(line.neck().midi(s))).toList();
    return new Step(before, length, together, spots, notes);
  }

  private double score(List<Spot> figure, int frets) {
    boolean asTheKey = Math.floorMod(frets, 12) == line.shift() && Math.abs(frets) <= WALKED_WHOLE;
    double high = 1 - (double) (figure.get(0).string() - 1) / line.neck().strings();
    return landingScore(up(figure, frets))
        + Weights.STARTS_ON_CHORD * share(oldChord, figure)
        + (asTheKey ? Weights.AS_THE_KEY_MOVES : 0)
        + Weights.HIGH_STRINGS * high
        - Weights.FRET_WALKED * Math.abs(frets);
  }

  private double landingScore(List<Spot> last) {
    int tonic = line.after().key().tonic().chroma();
    return Weights.LANDS_ON_CHORD * share(newChord, last)
        + (last.stream().anyMatch(s -> chroma(s) == tonic) ? Weights.LANDS_ON_TONIC : 0);
  }

  private double share(Set<Integer> tones, List<Spot> spots) {
    return (double) spots.stream().filter(s -> tones.contains(chroma(s))).count() / spots.size();
  }

  /** Each note of the new shape, run up to or down to through the old scale; the best of them. */
  private List<Run> scaleRuns(int count) {
    List<ScaleRun> runs = new ArrayList<>();
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
    return runs.stream()
        .sorted(Comparator.comparingDouble(ScaleRun::score).reversed())
        .limit(count)
        .map(this::written)
        .toList();
  }

  private void add(List<ScaleRun> runs, List<Dot> approach, Dot goal) {
    int leap = Math.abs(midi(approach.get(RUN_UP - 1)) - midi(goal));
    int jump = Math.abs(approach.get(RUN_UP - 1).fret() - goal.fret());
    if (leap <= WIDEST_LEAP && jump <= Shape.HAND) {
      double score = landingScore(List.of(goal.spot())) - Weights.FRET_WALKED * (leap + jump);
      runs.add(new ScaleRun(approach, goal, score));
    }
  }

  private Run written(ScaleRun run) {
    Beats length = halfABeat();
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < RUN_UP; i++) {
      Beats before = length.times((long) RUN_UP - i);
      steps.add(step(before, length, true, List.of(run.approach.get(i).spot())));
    }
    steps.add(step(Beats.ZERO, length, true, List.of(run.goal.spot())));
    int from = run.approach.get(0).fret();
    double travel = line.reach(run.goal.fret());
    return new Run(Kind.SCALE, steps, from, run.goal.fret(), travel);
  }

  private static int midi(Dot dot) {
    return dot.pitch().midi();
  }
}

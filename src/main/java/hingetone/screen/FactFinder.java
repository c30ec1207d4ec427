package hingetone.screen;

import hingetone.chart.ChartBar.Slot;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.ground.Ground;
import hingetone.ground.scales.BlueThird;
import hingetone.ground.scales.FittingScale;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.Hold;
import hingetone.ground.ways.Run;
import hingetone.ground.ways.Stay;
import hingetone.ground.ways.Turnaround;
import hingetone.ground.ways.WayWords;
import hingetone.neck.Dot;
import hingetone.neck.Fretboard;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.plan.Plan;
import hingetone.screen.ChartFacts.Fit;
import hingetone.screen.ChartFacts.OverChord;
import hingetone.screen.ChartFacts.ShapeNote;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Pitch;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Works out the facts of a chart, once, before anything is drawn. */
public final class FactFinder {
  private static final int CHOICES = 3;

  private final Form form;
  private final Ground ground;
  private final List<ShapeNote> all = new ArrayList<>();

  private FactFinder(Ground ground) {
    this.form = ground.form();
    this.ground = ground;
  }

  /**
   * The facts of a chart.
   *
   * @param title its title
   * @param groove the name of its groove
   * @param ground what lies under the hand
   * @param plan who speaks when
   */
  public static ChartFacts of(String title, String groove, Ground ground, Plan plan) {
    FactFinder finder = new FactFinder(ground);
    List<List<Fit>> fits = finder.form.bars().stream().map(finder::fits).toList();
    List<ChartFacts.Crossing> crossings =
        ground.crossings().stream().map(finder::crossing).toList();
    List<ChartFacts.Crossing> waysHome =
        ground.turnarounds().stream()
            .filter(t -> crossings.stream().noneMatch(c -> c.atBar() == t.atBar()))
            .map(finder::wayHome)
            .toList();
    return new ChartFacts(
        title,
        groove,
        finder.form,
        fits,
        crossings,
        waysHome,
        turnarounds(ground),
        plan,
        finder.neck(),
        ground.position());
  }

  /**
   * The facts that need no thought: chords, bars and turns over the keys' pentatonics, without
   * shapes or crossings. They are shown until the others are there.
   */
  public static ChartFacts sketch(String title, String groove, Fretboard board, Plan plan) {
    List<List<Fit>> fits =
        plan.form().bars().stream()
            .map(bar -> Collections.nCopies(bar.chords().chords().size(), plainFit(bar)))
            .toList();
    ChartFacts.Neck neck = neck(board, 5, 12);
    return new ChartFacts(
        title,
        groove,
        plan.form(),
        fits,
        List.of(),
        List.of(),
        List.of(),
        plan,
        neck,
        Optional.empty());
  }

  private static Fit plainFit(Bar bar) {
    Scale scale = bar.key().pentatonic();
    String name = scale.toString();
    return new Fit(name, names(bar.key(), scale.notes()), List.of(), name, List.of());
  }

  private static List<Integer> turnarounds(Ground ground) {
    return ground.turnarounds().stream()
        .map(FactFinder::barsOf)
        .flatMap(Collection::stream)
        .toList();
  }

  private static List<Integer> barsOf(Turnaround turnaround) {
    int at = turnaround.atBar();
    return IntStream.range(at - turnaround.bars(), at).boxed().toList();
  }

  private ChartFacts.Neck neck() {
    int low = all.stream().mapToInt(note -> note.dot().fret()).min().orElse(0);
    int high =
        all.stream()
            .mapToInt(note -> note.dot().fret())
            .max()
            .orElse(ground.fretboard().lastFret());
    return neck(ground.fretboard(), low, high);
  }

  private static ChartFacts.Neck neck(Fretboard board, int low, int high) {
    List<String> names =
        IntStream.rangeClosed(1, board.strings())
            .mapToObj(string -> board.tuning().string(string).name().toString())
            .toList();
    return new ChartFacts.Neck(names, board.lastFret(), low, high, board.leftHanded());
  }

  private List<Fit> fits(Bar bar) {
    return bar.chords().chords().stream().map(slot -> fit(bar, slot)).toList();
  }

  private Fit fit(Bar bar, Slot slot) {
    List<FittingScale> scales = ground.scalesAt(bar.number(), slot.beat());
    Shape neck = ground.neckAt(bar.number(), slot.beat());
    return new Fit(
        scales.get(0).scale().toString(),
        names(bar.key(), scales.get(0).scale().notes()),
        scales.stream().skip(1).limit(CHOICES).map(s -> s.scale().toString()).toList(),
        neck.scale().toString(),
        dots(neck, slot.chord()));
  }

  /** A shape's notes, and those of the chord that lie between them. */
  private List<ShapeNote> dots(Shape shape, Optional<Chord> chord) {
    List<NoteName> chordTones = chord.map(Chord::notes).orElse(List.of());
    Stream<Dot> between = chordTones.stream().flatMap(tone -> between(shape, tone));
    List<ShapeNote> dots =
        Stream.concat(shape.dots().stream(), between)
            .map(dot -> new ShapeNote(dot, over(dot, chord, shape.scale())))
            .toList();
    all.addAll(dots);
    return dots;
  }

  private static OverChord over(Dot dot, Optional<Chord> chord, Scale scale) {
    NoteName note = dot.pitch().name();
    if (chord.flatMap(c -> c.degreeOf(note.chroma())).isPresent()) {
      return OverChord.TONE;
    }
    boolean blue = chord.flatMap(c -> BlueThird.of(c, scale)).filter(note::soundsLike).isPresent();
    return blue ? OverChord.BLUE_THIRD : OverChord.OTHER;
  }

  /** Where a note that the shape's scale has not lies on the frets of the shape. */
  private Stream<Dot> between(Shape shape, NoteName note) {
    if (shape.scale().contains(note)) {
      return Stream.empty();
    }
    boolean minor = shape.scale().contains(shape.scale().tonic().plus(Interval.MINOR_THIRD));
    Key named = new Key(shape.scale().tonic(), ScaleType.named(minor ? "minor" : "major"));
    Interval degree = named.degreeOf(note.chroma());
    return IntStream.rangeClosed(1, ground.fretboard().strings())
        .boxed()
        .flatMap(string -> spots(string, shape))
        .filter(spot -> Math.floorMod(ground.fretboard().midi(spot), 12) == note.chroma())
        .map(spot -> new Dot(spot, degree, Pitch.at(note, ground.fretboard().midi(spot))));
  }

  private static Stream<Spot> spots(int string, Shape shape) {
    return IntStream.rangeClosed(shape.low(), shape.high()).mapToObj(f -> new Spot(string, f));
  }

  private static List<String> names(Key key, Collection<NoteName> notes) {
    return notes.stream().map(note -> key.readable(note).toString()).toList();
  }

  private static Optional<String> held(List<Hold> holds) {
    return holds.stream().findFirst().map(hold -> named(hold.ringing()));
  }

  private static Optional<String> reached(List<Run> runs) {
    return runs.stream()
        .findFirst()
        .map(run -> run.steps().get(run.steps().size() - 1))
        .flatMap(step -> step.notes().stream().max(Comparator.comparingInt(Pitch::midi)))
        .map(FactFinder::named);
  }

  private static String named(Pitch pitch) {
    return pitch.name().simplified().toString();
  }

  /** The ways over the line that a dominant leads over, the key staying. */
  private ChartFacts.Crossing wayHome(Turnaround home) {
    List<NoteName> stays = home.to().pentatonic().commonTones(home.scales().get(0).scale());
    return new ChartFacts.Crossing(
        home.atBar(),
        home.dominant().symbol(),
        home.to() + ", home",
        names(home.to(), stays),
        home.holds().stream().limit(CHOICES).map(WayWords::of).toList(),
        home.runs().stream().limit(CHOICES).map(WayWords::of).toList(),
        held(home.holds()),
        reached(home.runs()),
        stays.stream().map(NoteName::chroma).toList(),
        List.of());
  }

  private ChartFacts.Crossing crossing(Crossing crossing) {
    Bar next = form.bar(crossing.atBar());
    Slot first = next.chords().chords().get(0);
    Shape shape =
        crossing.stays().stream()
            .findFirst()
            .map(Stay::to)
            .orElse(ground.shapeAt(next.number(), first.beat()));
    return new ChartFacts.Crossing(
        crossing.atBar(),
        crossing.from().toString(),
        crossing.to().toString(),
        names(crossing.from(), crossing.commonTones().pentatonic()),
        crossing.holds().stream().limit(CHOICES).map(WayWords::of).toList(),
        crossing.runs().stream().limit(CHOICES).map(WayWords::of).toList(),
        held(crossing.holds()),
        reached(crossing.runs()),
        crossing.commonTones().pentatonic().stream().map(NoteName::chroma).toList(),
        dots(shape, first.chord()));
  }
}

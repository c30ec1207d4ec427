package hingetone.print;

import hingetone.chart.Leave;
import hingetone.ground.Ground;
import hingetone.ground.ways.CommonTones;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.Hold;
import hingetone.ground.ways.Run;
import hingetone.ground.ways.Stay;
import hingetone.ground.ways.Turnaround;
import hingetone.neck.Figure;
import hingetone.neck.Fretboard;
import hingetone.neck.PatternNumbers;
import hingetone.neck.Spot;
import hingetone.plan.Plan;
import hingetone.text.Choice;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The ways over one bar line, for people: a crossing's and a turnaround's. */
final class WaysText {
  /** Columns of the label before each way. */
  static final int INDENT = 8;

  /** Ways of a kind shown. */
  private static final int WAYS = 3;

  private final List<InkedLine> lines = new ArrayList<>();

  private final Fretboard neck;
  private final Plan plan;
  private final PatternNumbers patterns;

  private WaysText(Fretboard neck, Plan plan, PatternNumbers patterns) {
    this.neck = neck;
    this.plan = plan;
    this.patterns = patterns;
  }

  /**
   * What crosses the line before a bar; nothing where neither key nor dominant changes there.
   *
   * @param plan says which way is gone in which lap
   * @param patterns how shapes are numbered
   */
  static List<InkedLine> at(Ground ground, Plan plan, PatternNumbers patterns, int atBar) {
    WaysText text = new WaysText(ground.fretboard(), plan, patterns);
    ground.crossings().stream().filter(c -> c.atBar() == atBar).forEach(text::crossing);
    ground.turnarounds().stream().filter(t -> t.atBar() == atBar).forEach(text::turnaround);
    return text.lines;
  }

  private void crossing(Crossing crossing) {
    lines.add(InkedLine.of(""));
    int semitones = crossing.semitones();
    String shift = semitones + (Math.abs(semitones) == 1 ? " semitone" : " semitones");
    lines.add(
        InkedLine.of("crossing at bar " + crossing.atBar(), TextInk.STRONG)
            .plus("   " + crossing.from() + " to " + crossing.to() + ", " + shift, TextInk.PLAIN)
            .plus(gone(crossing.atBar()), TextInk.COMMON));
    CommonTones common = crossing.commonTones();
    lines.add(
        InkedLine.of(
            "  both pentatonics have "
                + names(common.pentatonic())
                + "; both scales "
                + names(common.scale())
                + "; both chords "
                + names(common.chords())));
    ways(crossing.holds(), crossing.runs(), crossing.stays());
  }

  /** Which way the plan has in the first two laps: {@code ; hold, then run}. */
  private String gone(int atBar) {
    List<String> laps =
        waysOfLaps(plan, atBar).stream().flatMap(way -> way.map(Choice::word).stream()).toList();
    return laps.isEmpty()
        ? ""
        : "; " + laps.stream().distinct().collect(Collectors.joining(", then "));
  }

  /** The ways over the line before a bar in the first two laps. */
  static List<Optional<Leave>> waysOfLaps(Plan plan, int atBar) {
    return List.of(plan.wayInto(atBar), plan.wayInto(atBar + plan.form().bars().size()));
  }

  private void turnaround(Turnaround turnaround) {
    lines.add(InkedLine.of(""));
    lines.add(
        InkedLine.of("turnaround at bar " + turnaround.atBar(), TextInk.STRONG)
            .plus("   " + turnaround.dominant() + " back to " + turnaround.to(), TextInk.PLAIN));
    lines.add(
        InkedLine.of(
            "  over it "
                + turnaround.scales().stream()
                    .limit(WAYS)
                    .map(s -> s.scale().toString())
                    .collect(Collectors.joining(", "))));
    ways(turnaround.holds(), turnaround.runs(), turnaround.stays());
  }

  private void ways(List<Hold> holds, List<Run> runs, List<Stay> stays) {
    Map<Integer, Hold> bestOfEachNote = new LinkedHashMap<>();
    holds.forEach(h -> bestOfEachNote.putIfAbsent(h.note().name().chroma(), h));
    List<Hold> shown = bestOfEachNote.values().stream().limit(WAYS).toList();
    shown.forEach(h -> hold(h, h == shown.get(0) ? "  hold  " : "  or    "));
    Map<String, Run> bestOfEachKind = new LinkedHashMap<>();
    runs.forEach(r -> bestOfEachKind.putIfAbsent(r.kind() + " " + r.figure().size(), r));
    bestOfEachKind.values().forEach(r -> run(r, r == runs.get(0) ? "  run   " : "  or    "));
    stays.stream().limit(1).forEach(this::stay);
  }

  private void hold(Hold hold, String label) {
    String degrees = hold.before().degree() + " before, " + hold.after().degree() + " after";
    lines.add(
        InkedLine.of(label, TextInk.COMMON)
            .plus(ShapeText.note(hold.note()) + " (" + hold.spot() + "): " + degrees, TextInk.PLAIN)
            .plus("; " + hold.afterwards() + travel(hold.travel()), TextInk.FAINT));
  }

  /** The notes step by step, then where: {@code strings 3 2, frets 9 10 > 10 11 > 11 12}. */
  private void run(Run run, String label) {
    String notes =
        steps(run, s -> s.notes().stream().map(ShapeText::note).collect(Collectors.joining(" ")));
    String frets =
        steps(
            run, s -> s.spots().stream().map(p -> "" + p.fret()).collect(Collectors.joining(" ")));
    List<Spot> strung =
        run.kind() == Run.Kind.WALK
            ? run.figure()
            : run.steps().stream().map(s -> s.spots().get(0)).toList();
    String strings = strung.stream().map(s -> "" + s.string()).collect(Collectors.joining(" "));
    boolean one = strung.stream().map(Spot::string).distinct().count() == 1;
    String where = one ? "string " + strung.get(0).string() : "strings " + strings;
    lines.add(
        InkedLine.of(label, TextInk.COMMON)
            .plus(notes + " on the line; " + where + ", frets " + frets, TextInk.PLAIN)
            .plus(
                "; begun "
                    + early(run.steps().get(0).beatsBefore())
                    + " before"
                    + octave(run)
                    + travel(run.travel()),
                TextInk.FAINT));
  }

  /** Where a walked double stop begins an octave lower, or else higher. */
  private String octave(Run run) {
    if (!run.steps().get(0).together()) {
      return "";
    }
    return octave(run, -1, "lower").or(() -> octave(run, 1, "higher")).orElse("");
  }

  private Optional<String> octave(Run run, int octaves, String where) {
    return run.octaves(neck, octaves)
        .map(Figure::touches)
        .map(t -> "; an octave " + where + " from " + t.get(0).spot() + ", " + t.get(1).spot());
  }

  private static String steps(Run run, Function<Run.Step, String> text) {
    return run.steps().stream().map(text).collect(Collectors.joining(" > "));
  }

  private static String early(Beats beats) {
    if (beats.equals(Beats.of(1, 2))) {
      return "half a beat";
    }
    return beats + (beats.equals(Beats.ONE) ? " beat" : " beats");
  }

  private void stay(Stay stay) {
    lines.add(
        InkedLine.of("  stay  ", TextInk.COMMON)
            .plus(
                stay.to().scale()
                    + " "
                    + patterns.name(stay.to())
                    + ", frets "
                    + stay.to().low()
                    + " to "
                    + stay.to().high(),
                TextInk.PLAIN)
            .plus(travel(stay.travel()), TextInk.FAINT));
  }

  private static String travel(double millimetres) {
    long centimetres = Math.round(millimetres / 10);
    return centimetres == 0 ? "" : "; the hand moves " + centimetres + " cm";
  }

  private static String names(List<NoteName> names) {
    return names.isEmpty()
        ? "nothing"
        : names.stream().map(n -> n.simplified().toString()).collect(Collectors.joining(" "));
  }
}

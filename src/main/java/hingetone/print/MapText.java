package hingetone.print;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.ground.CommonTones;
import hingetone.ground.Crossing;
import hingetone.ground.FittingScale;
import hingetone.ground.Ground;
import hingetone.ground.Hold;
import hingetone.ground.Run;
import hingetone.ground.Stay;
import hingetone.ground.Turnaround;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.theory.Chord;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The map for people: each section's chords with their scales, its shapes, and the ways over. */
public final class MapText {
  /** Scales shown for a chord where no single bar was asked for. */
  private static final int SCALES = 3;

  private static final int WAYS = 3;

  private record Chosen(Optional<Chord> chord, List<FittingScale> scales, Shape shape) {}

  private final Chart chart;
  private final Ground ground;
  private final MapSelection selection;
  private final NeckDrawing.Look look;
  private final List<InkedLine> lines = new ArrayList<>();

  private MapText(Chart chart, Ground ground, MapSelection selection, NeckDrawing.Look look) {
    this.chart = chart;
    this.ground = ground;
    this.selection = selection;
    this.look = look;
  }

  /** The map as lines. */
  public static List<InkedLine> lines(
      Chart chart, Ground ground, MapSelection selection, NeckDrawing.Look look) {
    MapText map = new MapText(chart, ground, selection, look);
    map.write();
    return map.lines;
  }

  private void write() {
    String tempo = chart.form().get(0).tempo().bpm().stripTrailingZeros().toPlainString();
    lines.add(InkedLine.of(chart.title(), Ink.STRONG).plus("   tempo " + tempo, Ink.PLAIN));
    lines.add(InkedLine.of(NeckDrawing.legend(look.unicode(), true), Ink.FAINT));
    List<Form.Bar> place = new ArrayList<>();
    for (Form.Bar bar : ground.form().bars()) {
      if (selection.has(bar)) {
        place.add(bar);
      }
      if (bar.isLastOfSection()) {
        if (!place.isEmpty()) {
          section(place);
        }
        ways(bar.number() + 1);
        place = new ArrayList<>();
      }
    }
  }

  private void section(List<Form.Bar> bars) {
    Form.Bar first = bars.get(0);
    String from = Integer.toString(first.number());
    String to = Integer.toString(bars.get(bars.size() - 1).number());
    blank();
    lines.add(
        InkedLine.of(first.section().name(), Ink.STRONG)
            .plus("   " + first.key() + ", " + first.meter(), Ink.PLAIN)
            .plus(from.equals(to) ? ", bar " + from : ", bars " + from + " to " + to, Ink.PLAIN));
    Map<Chosen, List<String>> chosen = new LinkedHashMap<>();
    for (Form.Bar bar : bars) {
      for (ChartBar.Slot slot : bar.chords().chords()) {
        List<FittingScale> scales = ground.scalesAt(bar.number(), slot.beat());
        Shape shape = ground.shapeAt(bar.number(), slot.beat());
        List<String> at =
            chosen.computeIfAbsent(new Chosen(slot.chord(), scales, shape), c -> new ArrayList<>());
        String number = Integer.toString(bar.number());
        if (!at.contains(number)) {
          at.add(number);
        }
      }
    }
    chosen.forEach(this::chord);
    shapes(chosen.keySet(), first);
  }

  private void chord(Chosen chosen, List<String> bars) {
    String symbol = chosen.chord.map(Chord::symbol).orElse("no chord");
    String where = bars.size() == 1 ? "bar " : "bars ";
    lines.add(InkedLine.of("  " + symbol, Ink.CHORD).plus("   " + where + spans(bars), Ink.FAINT));
    int shown = selection.bar().isPresent() ? chosen.scales.size() : SCALES;
    chosen.scales.stream()
        .limit(shown)
        .forEach(
            s -> {
              String fit = String.format(Locale.ROOT, "%.2f", s.fit());
              lines.add(InkedLine.of("    " + fit + "  " + s.scale(), Ink.PLAIN));
              lines.add(InkedLine.of("          " + s.why(), Ink.FAINT));
            });
  }

  /** Bar numbers with neighbours joined: {@code 1 to 4, 6}. */
  private static String spans(List<String> bars) {
    List<String> spans = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < bars.size(); i++) {
      boolean ends =
          i + 1 == bars.size()
              || Integer.parseInt(bars.get(i + 1)) != Integer.parseInt(bars.get(i)) + 1;
      if (ends) {
        spans.add(from == i ? bars.get(i) : bars.get(from) + " to " + bars.get(i));
        from = i + 1;
      }
    }
    return String.join(", ", spans);
  }

  /** The shapes of the route through a section, or all of the scale asked for. */
  private void shapes(Set<Chosen> chosen, Form.Bar first) {
    Set<Integer> common =
        ground
            .nextCrossing(Position.of(first.number(), 1))
            .map(c -> chromas(c.commonTones()))
            .orElse(Set.of());
    if (selection.scale().isPresent()) {
      Optional<Chord> chord = chosen.iterator().next().chord;
      ground.shapes(selection.scale().get()).forEach(s -> draw(s, chord, common));
      return;
    }
    Map<Shape, Optional<Chord>> shapes = new LinkedHashMap<>();
    chosen.forEach(c -> shapes.putIfAbsent(c.shape, c.chord));
    shapes.forEach((shape, chord) -> draw(shape, chord, common));
  }

  private static Set<Integer> chromas(CommonTones common) {
    return common.scale().stream().map(NoteName::chroma).collect(Collectors.toSet());
  }

  private void draw(Shape shape, Optional<Chord> chord, Set<Integer> common) {
    blank();
    lines.addAll(ShapeText.drawing(ground.fretboard(), shape, chord, common, look));
    if (selection.bar().isPresent() || selection.scale().isPresent()) {
      lines.addAll(ShapeText.touches(ground.fretboard(), shape));
    }
  }

  private void ways(int atBar) {
    if (!selection.hasLine(ground.form(), atBar)) {
      return;
    }
    ground.crossings().stream().filter(c -> c.atBar() == atBar).forEach(this::crossing);
    ground.turnarounds().stream().filter(t -> t.atBar() == atBar).forEach(this::turnaround);
  }

  private void crossing(Crossing crossing) {
    blank();
    int semitones = crossing.semitones();
    String shift = semitones + (Math.abs(semitones) == 1 ? " semitone" : " semitones");
    lines.add(
        InkedLine.of("crossing at bar " + crossing.atBar(), Ink.STRONG)
            .plus("   " + crossing.from() + " to " + crossing.to() + ", " + shift, Ink.PLAIN));
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

  private void turnaround(Turnaround turnaround) {
    blank();
    lines.add(
        InkedLine.of("turnaround at bar " + turnaround.atBar(), Ink.STRONG)
            .plus("   " + turnaround.dominant() + " back to " + turnaround.to(), Ink.PLAIN));
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
    bestOfEachNote.values().stream().limit(WAYS).forEach(this::hold);
    Map<String, Run> bestOfEachKind = new LinkedHashMap<>();
    runs.forEach(r -> bestOfEachKind.putIfAbsent(r.kind() + " " + r.figure().size(), r));
    bestOfEachKind.values().forEach(this::run);
    stays.stream().limit(1).forEach(this::stay);
  }

  private void hold(Hold hold) {
    String degrees = hold.before().degree() + " before, " + hold.after().degree() + " after";
    lines.add(
        InkedLine.of("  hold  ", Ink.COMMON)
            .plus(ShapeText.note(hold.note()) + " (" + hold.spot() + "): " + degrees, Ink.PLAIN)
            .plus("; " + hold.afterwards() + travel(hold.travel()), Ink.FAINT));
  }

  private void run(Run run) {
    String steps =
        run.steps().stream()
            .map(s -> s.notes().stream().map(ShapeText::note).collect(Collectors.joining(" ")))
            .collect(Collectors.joining(" > "));
    String strings =
        run.figure().stream()
            .map(Spot::string)
            .distinct()
            .map(s -> "" + s)
            .collect(Collectors.joining(" and "));
    boolean one = run.figure().stream().map(Spot::string).distinct().count() == 1;
    Beats early = run.steps().get(0).beatsBefore();
    lines.add(
        InkedLine.of("  run   ", Ink.COMMON)
            .plus(steps + " on the line", Ink.PLAIN)
            .plus(
                (one ? "; string " : "; strings ")
                    + strings
                    + ", fret "
                    + run.fromFret()
                    + " to "
                    + run.toFret()
                    + ", begun "
                    + early(early)
                    + " before"
                    + travel(run.travel()),
                Ink.FAINT));
  }

  private static String early(Beats beats) {
    if (beats.equals(Beats.of(1, 2))) {
      return "half a beat";
    }
    return beats + (beats.equals(Beats.ONE) ? " beat" : " beats");
  }

  private void stay(Stay stay) {
    lines.add(
        InkedLine.of("  stay  ", Ink.COMMON)
            .plus(
                stay.to().scale()
                    + " from its "
                    + stay.to().start()
                    + ", frets "
                    + stay.to().low()
                    + " to "
                    + stay.to().high(),
                Ink.PLAIN)
            .plus(travel(stay.travel()), Ink.FAINT));
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

  private void blank() {
    lines.add(InkedLine.of(""));
  }
}

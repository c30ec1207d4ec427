package hingetone.print;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.scales.BlueThird;
import hingetone.ground.scales.FittingScale;
import hingetone.ground.ways.CommonTones;
import hingetone.neck.Shape;
import hingetone.plan.Plan;
import hingetone.print.NeckPicture.Meaning;
import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
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

  /** Columns that a fret takes on a wide page and on one narrower than this, the best first. */
  private static final int NARROW = 72;

  private static final int LEAST_CELL = 5;
  private static final int[] WIDE_CELLS = {8, 6};
  private static final int[] NARROW_CELLS = {6};

  private record Chosen(Optional<Chord> chord, List<FittingScale> scales, Shape shape) {}

  /** What is said of a section in one place, whatever its bar numbers. */
  private record Said(String section, Key key, Set<Chosen> chosen) {}

  /** Where each was said first. */
  private final Map<Said, String> said = new HashMap<>();

  private final Map<List<String>, Integer> saidWays = new HashMap<>();
  private final Chart chart;
  private final Ground ground;
  private final MapSelection selection;
  private final Plan plan;
  private final boolean unicode;
  private final int width;
  private final List<InkedLine> lines = new ArrayList<>();

  private MapText(Chart chart, Ground ground, MapSelection selection, boolean unicode, int width) {
    this.chart = chart;
    this.ground = ground;
    this.selection = selection;
    this.plan = Plan.of(chart, ground.form());
    this.unicode = unicode;
    this.width = width;
  }

  /**
   * The map as lines.
   *
   * @param unicode whether signs beyond ASCII may be used
   * @param width columns of the page, 40 or more
   */
  public static List<InkedLine> lines(
      Chart chart, Ground ground, MapSelection selection, boolean unicode, int width) {
    MapText map = new MapText(chart, ground, selection, unicode, width);
    map.write();
    return map.lines;
  }

  private void write() {
    String tempo = chart.form().get(0).tempo().bpm().stripTrailingZeros().toPlainString();
    say(InkedLine.of(chart.title(), TextInk.STRONG).plus("   tempo " + tempo, TextInk.PLAIN), 2);
    lines.add(InkedLine.of(NeckDrawing.legend(unicode, signs()), TextInk.FAINT));
    if (selection.scale().isPresent()) {
      shapesOf(selection.scale().get());
      return;
    }
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

  /** What the shapes drawn may show besides notes of the scale and the chord. */
  private Set<Meaning> signs() {
    Set<Meaning> signs = EnumSet.noneOf(Meaning.class);
    if (!ground.crossings().isEmpty()) {
      signs.add(Meaning.STAYS);
    }
    if (ground.form().bars().stream().anyMatch(this::curls)) {
      signs.add(Meaning.CURLED);
    }
    return signs;
  }

  private boolean curls(Form.Bar bar) {
    return bar.chords().chords().stream()
        .anyMatch(
            slot -> {
              Scale scale = ground.scalesAt(bar.number(), slot.beat()).get(0).scale();
              return slot.chord().flatMap(chord -> BlueThird.of(chord, scale)).isPresent();
            });
  }

  private void section(List<Form.Bar> bars) {
    Form.Bar first = bars.get(0);
    String from = Integer.toString(first.number());
    String to = Integer.toString(bars.get(bars.size() - 1).number());
    String span = from.equals(to) ? "bar " + from : "bars " + from + " to " + to;
    blank();
    say(
        InkedLine.of(first.section().name(), TextInk.STRONG)
            .plus("   " + first.key() + ", " + first.meter() + ", " + span, TextInk.PLAIN),
        2);
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
    String before =
        said.putIfAbsent(new Said(first.section().name(), first.key(), chosen.keySet()), span);
    if (before != null) {
      lines.add(InkedLine.of("  as in " + before, TextInk.FAINT));
      return;
    }
    chosen.forEach(this::chord);
    shapes(chosen.keySet(), first);
  }

  private void chord(Chosen chosen, List<String> bars) {
    String symbol = chosen.chord.map(Chord::symbol).orElse("no chord");
    String where = bars.size() == 1 ? "bar " : "bars ";
    say(
        InkedLine.of("  " + symbol, TextInk.CHORD).plus("   " + where + spans(bars), TextInk.FAINT),
        4);
    int shown = selection.bar().isPresent() ? chosen.scales.size() : SCALES;
    chosen.scales.stream()
        .limit(shown)
        .forEach(
            s -> {
              String fit = String.format(Locale.ROOT, "%.2f", s.fit());
              lines.add(InkedLine.of("    " + fit + "  " + s.scale(), TextInk.PLAIN));
              say(InkedLine.of("          " + s.why(), TextInk.FAINT), 10);
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

  /** Each shape of a scale once, in its lowest place, marked for the first bar to be shown. */
  private void shapesOf(Scale scale) {
    Form.Bar first = ground.form().bars().stream().filter(selection::has).findFirst().orElseThrow();
    Optional<Chord> chord = first.chords().chords().get(0).chord();
    Map<Interval, Shape> lowest = new LinkedHashMap<>();
    ground.shapes(scale).forEach(shape -> lowest.putIfAbsent(shape.start(), shape));
    lowest.values().forEach(shape -> draw(shape, chord, common(first)));
  }

  /** The shapes of the route through a section. */
  private void shapes(Set<Chosen> chosen, Form.Bar first) {
    Map<Shape, Optional<Chord>> shapes = new LinkedHashMap<>();
    chosen.forEach(c -> shapes.putIfAbsent(c.shape, c.chord));
    shapes.forEach((shape, chord) -> draw(shape, chord, common(first)));
  }

  /** What the next key has, too. */
  private Set<Integer> common(Form.Bar bar) {
    return ground
        .nextCrossing(Position.of(bar.number(), 1))
        .map(c -> chromas(c.commonTones()))
        .orElse(Set.of());
  }

  private static Set<Integer> chromas(CommonTones common) {
    return common.scale().stream().map(NoteName::chroma).collect(Collectors.toSet());
  }

  private void draw(Shape shape, Optional<Chord> chord, Set<Integer> common) {
    blank();
    NeckDrawing.Look look = new NeckDrawing.Look(unicode, cell(shape));
    List<InkedLine> drawing =
        ShapeText.drawing(ground.fretboard(), shape, selection.patterns(), chord, common, look);
    say(drawing.get(0), 4);
    lines.addAll(drawing.subList(1, drawing.size()));
    if (selection.bar().isPresent()) {
      for (InkedLine line : ShapeText.touches(ground.fretboard(), shape)) {
        say(line, WaysText.INDENT);
      }
    }
  }

  /** Columns for a fret: what the page is wide enough for, less where a shape is very long. */
  private int cell(Shape shape) {
    int frets = shape.high() - shape.low() + 1;
    return Arrays.stream(width < NARROW ? NARROW_CELLS : WIDE_CELLS)
        .filter(cell -> ShapeText.INDENT + NeckDrawing.labelWidth() + frets * cell <= width)
        .findFirst()
        .orElse(LEAST_CELL);
  }

  private void ways(int atBar) {
    if (selection.hasLine(ground.form(), atBar)) {
      List<InkedLine> ways = WaysText.at(ground, plan, selection.patterns(), atBar);
      List<String> words = ways.stream().skip(2).map(InkedLine::plain).toList();
      Integer before = words.isEmpty() ? null : saidWays.putIfAbsent(words, atBar);
      if (before != null) {
        ways =
            List.of(ways.get(0), ways.get(1), InkedLine.of("  as at bar " + before, TextInk.FAINT));
      }
      for (InkedLine line : ways) {
        say(line, WaysText.INDENT);
      }
    }
  }

  /** A line, broken where the page ends. */
  private void say(InkedLine line, int indent) {
    lines.addAll(line.wrapped(width, indent));
  }

  private void blank() {
    lines.add(InkedLine.of(""));
  }
}

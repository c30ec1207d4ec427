package hingetone.print;

import static hingetone.print.Json.object;

import hingetone.chart.Chart;
import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.ground.scales.FittingScale;
import hingetone.ground.ways.Crossing;
import hingetone.ground.ways.Hold;
import hingetone.ground.ways.Run;
import hingetone.ground.ways.Stay;
import hingetone.ground.ways.Turnaround;
import hingetone.neck.Dot;
import hingetone.neck.Figure;
import hingetone.neck.Shape;
import hingetone.neck.Spot;
import hingetone.plan.Plan;
import hingetone.text.Choice;
import hingetone.theory.Chord;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The map as JSON, notes spelled strictly. */
public final class MapJson {
  private final Chart chart;
  private final Ground ground;
  private final MapSelection selection;
  private final Plan plan;

  private MapJson(Chart chart, Ground ground, MapSelection selection) {
    this.chart = chart;
    this.ground = ground;
    this.selection = selection;
    this.plan = Plan.of(chart, ground.form());
  }

  /** The whole answer as a tree for {@link Json#text}. */
  public static Object tree(Chart chart, Ground ground, MapSelection selection) {
    return new MapJson(chart, ground, selection).tree();
  }

  private Object tree() {
    return object(
        "title", chart.title(),
        "tempo", chart.form().get(0).tempo().bpm(),
        "meter", chart.form().get(0).meter().toString(),
        "sections", sections(),
        "shapes", shapes(),
        "touches", touches(),
        "crossings",
            ground.crossings().stream()
                .filter(c -> selection.hasLine(ground.form(), c.atBar()))
                .map(this::crossing)
                .toList(),
        "turnarounds",
            ground.turnarounds().stream()
                .filter(t -> selection.hasLine(ground.form(), t.atBar()))
                .map(this::turnaround)
                .toList());
  }

  /** One entry for each place in the form that has a bar to show. */
  private List<Object> sections() {
    List<Object> sections = new ArrayList<>();
    List<Object> bars = new ArrayList<>();
    for (Form.Bar bar : ground.form().bars()) {
      if (selection.has(bar)) {
        bars.add(object("bar", bar.number(), "chords", chords(bar)));
      }
      if (bar.isLastOfSection() && !bars.isEmpty()) {
        sections.add(
            object(
                "name", bar.section().name(),
                "key", bar.key().toString(),
                "tempo", bar.section().tempo().bpm(),
                "meter", bar.meter().toString(),
                "bars", bars));
        bars = new ArrayList<>();
      }
    }
    return sections;
  }

  private List<Object> chords(Form.Bar bar) {
    List<Object> chords = new ArrayList<>();
    for (ChartBar.Slot slot : bar.chords().chords()) {
      chords.add(
          object(
              "symbol", slot.chord().map(Chord::symbol),
              "beat", slot.beat().toString(),
              "beats", slot.beats().toDouble(),
              "notes", slot.chord().map(c -> texts(c.notes())).orElse(List.of()),
              "scales", scales(ground.scalesAt(bar.number(), slot.beat()))));
    }
    return chords;
  }

  private static List<Map<String, Object>> scales(List<FittingScale> scales) {
    return scales.stream()
        .map(
            s ->
                object(
                    "name", s.scale().toString(),
                    "notes", texts(s.scale().notes()),
                    "fit", s.fit(),
                    "why", s.why()))
        .toList();
  }

  /** A scale that a section's shapes are of. */
  private record Wanted(String section, Scale scale) {}

  /** The best scales of each section, or the one asked for. */
  private Set<Wanted> wanted() {
    Set<Wanted> wanted = new LinkedHashSet<>();
    for (Form.Bar bar : ground.form().bars()) {
      if (selection.has(bar)) {
        for (ChartBar.Slot slot : bar.chords().chords()) {
          Scale best = ground.scalesAt(bar.number(), slot.beat()).get(0).scale();
          wanted.add(new Wanted(bar.section().name(), selection.scale().orElse(best)));
        }
      }
    }
    return wanted;
  }

  private List<Object> shapes() {
    return wanted().stream()
        .flatMap(w -> ground.shapes(w.scale).stream().map(s -> shape(w.section, s)))
        .toList();
  }

  /** What fingers do in the shapes, once for each scale: it would be the same in every section. */
  private List<Object> touches() {
    return wanted().stream()
        .map(Wanted::scale)
        .distinct()
        .map(scale -> TouchesJson.tree(ground.fretboard(), scale, ground.shapes(scale)))
        .toList();
  }

  private Object shape(String section, Shape shape) {
    return object(
        "section", section,
        "scale", shape.scale().toString(),
        "start", shape.start().toString(),
        "pattern", selection.patterns().of(shape),
        "startNote", shape.lowest().pitch().name().toString(),
        "low", shape.low(),
        "high", shape.high(),
        "stretch", shape.stretch().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
        "strings", shape.strings().stream().map(s -> s.stream().map(Dot::fret).toList()).toList());
  }

  private Object crossing(Crossing crossing) {
    return object(
        "atBar", crossing.atBar(),
        "from", crossing.from().toString(),
        "to", crossing.to().toString(),
        "semitones", crossing.semitones(),
        "commonTones",
            object(
                "pentatonic", texts(crossing.commonTones().pentatonic()),
                "scale", texts(crossing.commonTones().scale()),
                "chords", texts(crossing.commonTones().chords())),
        "ways",
            WaysText.waysOfLaps(plan, crossing.atBar()).stream()
                .map(way -> way.map(Choice::word).orElse(null))
                .toList(),
        "holds", crossing.holds().stream().map(hold -> hold(hold, crossing.holds())).toList(),
        "runs", crossing.runs().stream().map(this::run).toList(),
        "stays", crossing.stays().stream().map(MapJson::stay).toList());
  }

  private Object turnaround(Turnaround turnaround) {
    return object(
        "atBar", turnaround.atBar(),
        "bars", turnaround.bars(),
        "dominant", turnaround.dominant().symbol(),
        "to", turnaround.to().toString(),
        "scales", scales(turnaround.scales()),
        "holds", turnaround.holds().stream().map(hold -> hold(hold, turnaround.holds())).toList(),
        "runs", turnaround.runs().stream().map(this::run).toList(),
        "stays", turnaround.stays().stream().map(MapJson::stay).toList());
  }

  private static Object hold(Hold hold, List<Hold> holds) {
    return object(
        "chosen", hold == holds.get(0),
        "note", hold.note().toString(),
        "string", hold.spot().string(),
        "fret", hold.spot().fret(),
        "degreeBefore", hold.before().degree().toString(),
        "degreeAfter", hold.after().degree().toString(),
        "chordBefore", hold.before().overChord(),
        "chordAfter", hold.after().overChord(),
        "bend", hold.bend().map(MapJson::bend),
        "bentFirst", hold.bentFirst(),
        "move", hold.move().name().toLowerCase(java.util.Locale.ROOT),
        "noteAfter", hold.noteAfter().toString(),
        "afterwards", hold.afterwards(),
        "score", hold.score(),
        "travelMm", Math.round(hold.travel()));
  }

  private static Object bend(Hold.BentHold bend) {
    return object(
        "to", bend.to().toString(),
        "semitones", bend.size().semitones(),
        "degreeBefore", bend.before().degree().toString(),
        "degreeAfter", bend.after().degree().toString());
  }

  private Object run(Run run) {
    return object(
        "kind", run.kind().name().toLowerCase(java.util.Locale.ROOT),
        "figure", run.figure().stream().map(MapJson::spot).toList(),
        "fromFret", run.fromFret(),
        "toFret", run.toFret(),
        "frets", run.frets(),
        "travelMm", Math.round(run.travel()),
        "octaveLower", run.octaves(ground.fretboard(), -1).map(MapJson::spots),
        "octaveHigher", run.octaves(ground.fretboard(), 1).map(MapJson::spots),
        "steps", run.steps().stream().map(MapJson::step).toList());
  }

  private static Object step(Run.Step step) {
    return object(
        "beatsBefore", step.beatsBefore().toDouble(),
        "beats", step.beats().toDouble(),
        "together", step.together(),
        "notes", texts(step.notes()),
        "spots", step.spots().stream().map(MapJson::spot).toList());
  }

  /** Where the fingers of a figure go. */
  static Object spots(Figure figure) {
    return figure.touches().stream().map(touch -> spot(touch.spot())).toList();
  }

  static Object spot(Spot spot) {
    return object("string", spot.string(), "fret", spot.fret());
  }

  private static Object stay(Stay stay) {
    return object(
        "from", stay.from().start().toString(),
        "to", stay.to().start().toString(),
        "low", stay.to().low(),
        "high", stay.to().high(),
        "travelMm", Math.round(stay.travel()));
  }

  private static List<String> texts(List<?> values) {
    return values.stream().map(Object::toString).toList();
  }
}

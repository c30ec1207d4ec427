package hingetone.hostile;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.groove.Grooves;
import hingetone.ground.Ground;
import hingetone.handout.MusicXml;
import hingetone.handout.TabSheet;
import hingetone.midi.MidiFile;
import hingetone.neck.Fretboard;
import hingetone.phrase.Statement;
import hingetone.phrase.StatementBank;
import hingetone.phrase.maker.LeadPart;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.Plan;
import hingetone.print.Json;
import hingetone.print.MapJson;
import hingetone.print.MapSelection;
import hingetone.print.MapText;
import hingetone.print.PlanJson;
import hingetone.print.PlanText;
import hingetone.score.Score;
import hingetone.screen.FactFinder;
import hingetone.screen.State;
import hingetone.screen.State.Terminal;
import hingetone.screen.ViewSettings;
import hingetone.screen.picture.Size;
import hingetone.screen.view.View;
import hingetone.sequencer.Status;
import hingetone.text.Printable;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import java.util.List;

/** All that is made of a chart before it sounds: what is checked, mapped, planned, arranged. */
final class ChartJourney {
  private static final int LAPS = 2;
  private static final int WIDTH = 80;
  private static final Grooves GROOVES = Grooves.builtIn();
  private static final List<Statement> BANK = StatementBank.builtIn().read().value().orElseThrow();

  private final Chart chart;
  private final Form form;
  private final Fretboard neck;
  private final Ground ground;
  private final Plan plan;
  private final PhraseMaker maker;

  private ChartJourney(Chart chart) {
    this.chart = chart;
    this.form = Form.of(chart);
    this.neck = Fretboard.of(chart.tuning(), chart.capo());
    this.ground = Ground.of(form, neck);
    this.plan = Plan.of(chart, form);
    this.maker = PhraseMaker.of(plan, ground, chart.seed()).withBank(BANK, section -> false);
  }

  /**
   * Reads a text and, where it is a chart, takes it all the way.
   *
   * @return its problems, none for a chart
   */
  static List<Diagnostic> of(String text) {
    Source source = new Source("drawn.yaml", text);
    Reading<Chart> reading = ChartReader.read(source);
    for (Diagnostic problem : reading.problems()) {
      if (problem.span().end() > text.length()) {
        throw new AssertionError("a problem outside its text: " + problem.message());
      }
      printable(problem.report());
    }
    if (reading.value().isPresent()) {
      ChartJourney journey = new ChartJourney(reading.value().get());
      journey.map();
      journey.plan();
      journey.sheets();
      journey.arrange(source);
      journey.show();
    }
    return reading.problems();
  }

  private void map() {
    MapSelection all = MapSelection.ALL;
    MapText.lines(chart, ground, all, true, WIDTH).forEach(line -> printable(line.plain()));
    printable(Json.text(MapJson.tree(chart, ground, all)));
  }

  private void plan() {
    printable(PlanText.of(plan, LAPS, prompt -> List.of()));
    for (int lap = 1; lap <= LAPS; lap++) {
      printable(PlanJson.of(plan.promptsOfLap(lap), ground));
    }
  }

  private void sheets() {
    printable(TabSheet.of(chart, plan, maker, 1));
    printable(MusicXml.of(chart, plan, maker, 1));
  }

  /** The band, with every example phrase; a groove that is not there or does not fit is told. */
  private void arrange(Source source) {
    Reading<Backing> band = Backing.read(chart, GROOVES, source);
    band.problems().forEach(problem -> printable(problem.report()));
    band.value().ifPresent(this::arrange);
  }

  private void arrange(Backing band) {
    LeadPart lead = new LeadPart(plan, maker, band::played);
    for (int lap = 1; lap <= LAPS; lap++) {
      Score score = lap == LAPS ? band.lastLap(lap) : band.lap(lap);
      MidiFile.bytes(score.with(lead.ofLap(lap, prompt -> !prompt.isRest())));
    }
  }

  private void show() {
    Terminal terminal = new Terminal(new Size(24, WIDTH), false);
    Status status = Status.atRest(form.bar(1).section().tempo(), 60);
    State state =
        State.of(
            FactFinder.of(chart.title(), "plain", ground, plan),
            status,
            ViewSettings.USUAL,
            terminal);
    printable(View.render(state, terminal.size()).text());
  }

  private static void printable(String text) {
    text.codePoints()
        .filter(c -> c != '\n' && !Printable.isPrintable(c))
        .findFirst()
        .ifPresent(
            c -> {
              throw new AssertionError("not fit to print: U+%04X in %s".formatted(c, text));
            });
  }
}

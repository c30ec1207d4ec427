package hingetone.play;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.plan.Plan;
import hingetone.screen.ChartFacts;
import hingetone.screen.FactFinder;
import hingetone.screen.State;
import hingetone.screen.State.Terminal;
import hingetone.screen.ViewSettings;
import hingetone.screen.picture.Painter;
import hingetone.screen.picture.Size;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.screen.view.View;
import hingetone.sequencer.Status;
import hingetone.text.reading.Source;
import java.util.concurrent.CompletableFuture;

/**
 * What can be done for the first picture while the command line and the chart are still being read:
 * the terminal is looked for, and a picture that nobody sees is drawn, so that the classes it takes
 * are there.
 */
public final class FirstPicture {
  private static final Source CHART =
      new Source(
          "",
          """
          title: Nobody sees this
          sections:
            one: {key: C minor, bars: "| Cm7 | F7 / Cm7 / | Cm7 | G7 |"}
            two: {key: F minor, bars: "| Fm7 | % | Bbm7 | C7 |"}
          """);

  private FirstPicture() {}

  /** Begins, on other threads. */
  public static void prepare() {
    TerminalScreen.prepare();
    CompletableFuture.runAsync(FirstPicture::draw);
  }

  static String draw() {
    Chart chart = ChartReader.read(CHART).value().orElseThrow();
    Form form = Form.of(chart);
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    ChartFacts facts = FactFinder.sketch(chart.title(), "", board, Plan.of(chart, form));
    Status band = Status.atRest(form.bar(1).section().tempo(), 0);
    TerminalLook look = TerminalLook.of(System.getenv(), System.getProperty("os.name"));
    State state = State.of(facts, band, ViewSettings.USUAL, new Terminal(new Size(30, 100), false));
    return new Painter(look).paint(View.render(state, state.size()));
  }
}

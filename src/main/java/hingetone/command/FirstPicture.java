package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.exchange.Plan;
import hingetone.neck.Fretboard;
import hingetone.screen.Band;
import hingetone.screen.Facts;
import hingetone.screen.Look;
import hingetone.screen.Painter;
import hingetone.screen.Settings;
import hingetone.screen.Size;
import hingetone.screen.State;
import hingetone.screen.Survey;
import hingetone.screen.View;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.text.Source;
import java.util.concurrent.CompletableFuture;

/**
 * What can be done for the first picture while the command line and the chart are still being read:
 * the terminal is looked for, and a picture that nobody sees is drawn, so that the classes it takes
 * are there.
 */
final class FirstPicture {
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
  static void prepare() {
    TerminalScreen.prepare();
    CompletableFuture.runAsync(FirstPicture::draw);
  }

  static String draw() {
    Chart chart = ChartReader.read(CHART).value().orElseThrow();
    Form form = Form.of(chart);
    Fretboard board = Fretboard.of(chart.tuning(), chart.capo());
    Facts facts = Survey.sketch(chart.title(), "", board, Plan.of(chart, form));
    Band band = Band.at(form.bar(1).section().tempo(), 0);
    Look look = Look.of(System.getenv(), System.getProperty("os.name"));
    State state = State.of(facts, band, Settings.USUAL, false, new Size(30, 100));
    return new Painter(look).paint(View.render(state, state.size()));
  }
}

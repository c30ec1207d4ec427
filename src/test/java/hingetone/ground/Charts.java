package hingetone.ground;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.text.Source;
import hingetone.time.Beats;

/** Grounds of small charts for the tests. */
final class Charts {
  private Charts() {}

  /** A chart of one section. */
  static Ground one(String key, String bars) {
    return ground(section("one", key, bars), Fretboard.of(Tuning.STANDARD, 0));
  }

  /** A chart of two sections. */
  static Ground two(String key, String bars, String nextKey, String nextBars, Fretboard neck) {
    return ground(section("one", key, bars) + section("two", nextKey, nextBars), neck);
  }

  static Ground ground(String sections, Fretboard neck) {
    Source source = new Source("test", "sections:\n" + sections);
    Chart chart = ChartReader.read(source).value().orElseThrow();
    return Ground.of(Form.of(chart), neck);
  }

  static String section(String name, String key, String bars) {
    return "  " + name + ":\n    key: " + key + "\n    bars: |\n      | " + bars + " |\n";
  }

  /** The names of the scales over the chord on a bar line, the best first. */
  static java.util.List<String> names(Ground ground, int bar) {
    return ground.scalesAt(bar, Beats.ONE).stream().map(s -> s.scale().toString()).toList();
  }
}

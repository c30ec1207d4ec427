package hingetone.ground;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.EveryPair;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.text.reading.Source;
import hingetone.theory.Keys;
import hingetone.time.Beats;

/** Grounds of small charts for the tests. */
public final class GroundCharts {
  private static final Ground EVERY_MINOR_PAIR =
      Ground.of(
          Form.of(EveryPair.of(Keys.MINOR, key -> key.tonic() + "m7 | " + key.tonic() + "m7")),
          Fretboard.of(Tuning.STANDARD, 0));

  private GroundCharts() {}

  /** A chart of one section. */
  public static Ground one(String key, String bars) {
    return ground(section("one", key, bars), Fretboard.of(Tuning.STANDARD, 0));
  }

  /** A chart of two sections. */
  public static Ground two(
      String key, String bars, String nextKey, String nextBars, Fretboard neck) {
    return ground(section("one", key, bars) + section("two", nextKey, nextBars), neck);
  }

  /** From every minor key to every other, two bars of the tonic's chord in each, on a guitar. */
  public static Ground everyMinorPair() {
    return EVERY_MINOR_PAIR;
  }

  public static Ground ground(String sections, Fretboard neck) {
    return Ground.of(form(sections), neck);
  }

  /** The form of one section. */
  public static Form form(String key, String bars) {
    return form(section("one", key, bars));
  }

  public static Form form(String sections) {
    Source source = new Source("test", "sections:\n" + sections);
    Chart chart = ChartReader.read(source).value().orElseThrow();
    return Form.of(chart);
  }

  public static String section(String name, String key, String bars) {
    return "  " + name + ":\n    key: " + key + "\n    bars: |\n      | " + bars + " |\n";
  }

  /** The names of the scales over the chord on a bar line, the best first. */
  public static java.util.List<String> names(Ground ground, int bar) {
    return ground.scalesAt(bar, Beats.ONE).stream().map(s -> s.scale().toString()).toList();
  }
}

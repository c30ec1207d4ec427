package hingetone.ground;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.print.Json;
import hingetone.print.MapJson;
import hingetone.print.MapSelection;
import hingetone.text.reading.Source;
import java.util.List;

/**
 * How long the map of long charts takes and what it keeps in memory, run by hand: {@code java -cp
 * src/target/test-classes:src/target/classes:target/lib/* hingetone.ground.GroundBench}.
 */
final class GroundBench {
  private static final int REPEATS = 5;

  private GroundBench() {}

  public static void main(String[] args) {
    measure(chart(1000), 1000);
    for (int bars : List.of(250, 500, 1000, 2000, 4000)) {
      measure(chart(bars), bars);
    }
  }

  private static void measure(Chart chart, int bars) {
    long[] millis = new long[REPEATS];
    long kept = 0;
    int length = 0;
    for (int i = 0; i < REPEATS; i++) {
      long before = used();
      long start = System.nanoTime();
      Ground ground = Ground.of(Form.of(chart), Fretboard.of(chart.tuning(), chart.capo()));
      length = Json.text(MapJson.tree(chart, ground, MapSelection.ALL)).length();
      millis[i] = (System.nanoTime() - start) / 1_000_000;
      kept = used() - before;
      if (ground.crossings().isEmpty()) {
        throw new IllegalStateException("no crossings");
      }
    }
    java.util.Arrays.sort(millis);
    System.out.printf(
        "%5d bars: median %5d ms, kept %6.1f MB, JSON %5.1f MB%n",
        bars, millis[REPEATS / 2], kept / 1e6, length / 1e6);
  }

  private static long used() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return runtime.totalMemory() - runtime.freeMemory();
  }

  /** Sections of ten bars, each in another key than the one before. */
  private static Chart chart(int bars) {
    String[][] keys = {
      {"D minor", "Dm7", "Gm7", "A7b9"},
      {"F# minor", "F#m7", "C#m7", "G#7"},
      {"C major", "Cmaj7", "Fmaj7", "G7"},
      {"F blues", "F7", "Bb7", "C7"}
    };
    StringBuilder text = new StringBuilder("sections:\n");
    for (int s = 0; s < bars / 10; s++) {
      String[] k = keys[s % keys.length];
      String line = "%s | %s | %s | %s / %s /";
      String four = String.format(line, k[1], k[2], k[1], k[2], k[3]);
      text.append(
          GroundCharts.section("s" + s, k[0], four + " | " + four + " | " + k[1] + " | " + k[3]));
    }
    return ChartReader.read(new Source("bench", text.toString())).value().orElseThrow();
  }
}

package hingetone.hostile;

import com.sun.management.ThreadMXBean;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.text.reading.Source;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;

/**
 * Time and memory of reading long charts, right ones and broken ones, and how both grow. By hand:
 *
 * <pre>{@code
 * java -Xmx256m -cp 'src/target/test-classes:src/target/classes:target/lib/*' \
 *     hingetone.hostile.ReadingBench
 * }</pre>
 */
final class ReadingBench {
  private static final int WARM_UPS = 300;
  private static final int RUNS = 21;
  private static final String BAR = " Fm7 | Dm7b5 / G7(b9,#11) / | C7#9/E | % |";
  private static final String SLIP = " Fm7 | Dmj7b5 / G7(b9,#11) / | C7#9/H | % |";
  private static final int BARS_A_LINE = 4;

  private ReadingBench() {}

  public static void main(String[] arguments) {
    for (int i = 0; i < WARM_UPS; i++) {
      read(chart(1_000, BAR));
      read(chart(1_000, SLIP));
    }
    for (int bars : new int[] {1_000, 2_000, 5_000, 10_000, 20_000}) {
      measure("right", bars, chart(bars, BAR));
    }
    for (int bars : new int[] {1_000, 10_000, 20_000}) {
      measure("two slips a line", bars, chart(bars, SLIP));
    }
  }

  private static Source chart(int bars, String line) {
    return new Source(
        "long",
        "title: Long way round\nsections:\n  all:\n    key: F minor\n    bars: |\n"
            + ("      |" + line + "\n").repeat(bars / BARS_A_LINE));
  }

  private static void measure(String what, int bars, Source source) {
    double[] millis = new double[RUNS];
    for (int run = 0; run < RUNS; run++) {
      long start = System.nanoTime();
      read(source);
      millis[run] = (System.nanoTime() - start) / 1e6;
    }
    Arrays.sort(millis);
    System.out.printf(
        Locale.ROOT,
        "%s: %d bars, %d characters: median %.1f ms, slowest %.1f ms, %.2f µs a bar; %.1f MB allocated%n",
        what,
        bars,
        source.text().length(),
        millis[RUNS / 2],
        millis[RUNS - 1],
        1000 * millis[RUNS / 2] / bars,
        allocated(source) / 1e6);
  }

  /** Reads and unrolls a chart, as every command does; how many bars or problems it gave. */
  private static int read(Source source) {
    var reading = ChartReader.read(source);
    return reading.value().map(ReadingBench::bars).orElse(reading.problems().size());
  }

  private static int bars(Chart chart) {
    return Form.of(chart).bars().size();
  }

  private static long allocated(Source source) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    read(source);
    return threads.getCurrentThreadAllocatedBytes() - before;
  }
}

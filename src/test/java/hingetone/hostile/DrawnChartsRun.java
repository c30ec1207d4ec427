package hingetone.hostile;

import hingetone.text.reading.Diagnostic;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;

/**
 * Charts drawn by lot, each as it is and some times with one thing wrong, taken all the way from
 * the reader to the band: what is right is read, what is not is refused with a place or means
 * something, and nothing fails.
 *
 * <p>By hand, after {@code mvn verify}:
 *
 * <pre>{@code
 * java -Xmx256m -cp 'src/target/test-classes:src/target/classes:target/lib/*' \
 *     hingetone.hostile.DrawnChartsRun 10000
 * }</pre>
 */
final class DrawnChartsRun {
  /** Of each chart so many flawed ones are made. */
  private static final int FLAWED = 19;

  private final Queue<String> failures = new ConcurrentLinkedQueue<>();
  private final AtomicInteger charts = new AtomicInteger();
  private final AtomicInteger texts = new AtomicInteger();

  /** The first argument is how many are drawn; a second one prints the chart with that number. */
  public static void main(String[] arguments) {
    if (arguments.length > 1) {
      ChartDrawing drawing = ChartDrawing.of(Long.parseLong(arguments[1]));
      System.out.println(drawing.text());
      for (int i = 0; i < FLAWED; i++) {
        System.out.println(
            "---- flawed\n" + ChartDrawing.of(Long.parseLong(arguments[1])).flawed(i));
      }
      return;
    }
    DrawnChartsRun run = new DrawnChartsRun();
    System.out.println(run.over(Integer.parseInt(arguments[0])));
    run.failures.forEach(System.out::println);
  }

  /** Everything that went wrong so far, with the number of its chart. */
  Queue<String> failures() {
    return failures;
  }

  /** Takes so many drawn charts, each right and flawed; the figures in a line. */
  String over(int count) {
    LongStream.range(0, count).parallel().forEach(this::take);
    return String.format(
        "%d right charts, %d flawed ones, of which %d are charts still; %d failures",
        count, texts.get() - count, charts.get() - count, failures.size());
  }

  private void take(long number) {
    ChartDrawing drawing = ChartDrawing.of(number);
    List<Diagnostic> problems = journey(number, drawing.text());
    if (!problems.isEmpty()) {
      failures.add(number + " is refused: " + problems.get(0).report());
    }
    for (int i = 0; i < FLAWED; i++) {
      journey(number, ChartDrawing.of(number).flawed(i));
    }
  }

  private List<Diagnostic> journey(long number, String text) {
    texts.incrementAndGet();
    try {
      List<Diagnostic> problems = ChartJourney.of(text);
      charts.addAndGet(problems.isEmpty() ? 1 : 0);
      return problems;
    } catch (RuntimeException | Error e) {
      failures.add(number + " fails: " + e + " at " + e.getStackTrace()[0]);
      return List.of();
    }
  }
}

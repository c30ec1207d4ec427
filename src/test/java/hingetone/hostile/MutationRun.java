package hingetone.hostile;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.groove.GrooveReader;
import hingetone.phrase.PhraseReader;
import hingetone.phrase.Statement;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import hingetone.time.Beats;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Damaged charts, grooves and files of phrases through the readers: no exception, every problem
 * within its text, every report printable, and what is read without a problem makes sense.
 *
 * <p>By hand, after {@code mvn verify}, a million of each within 64 MB:
 *
 * <pre>{@code
 * java -Xmx64m -cp 'src/target/test-classes:src/target/classes:target/lib/*' \
 *     hingetone.hostile.MutationRun 1000000
 * }</pre>
 */
final class MutationRun {
  private static final long SEED = 20;
  private static final String HOSTILE = "src/test/resources/hostile";
  private static final int MOST_REPORTS = 10;
  private static final double SLOW_MILLIS = 20;

  private final String name;
  private final Mutations mutations;
  private final Function<Source, Reading<?>> reader;
  private final List<String> failures = new ArrayList<>();
  private int read;
  private boolean lastWasRead;
  private double slowest;
  private long slowestNumber;

  private MutationRun(String name, List<Path> files, Function<Source, Reading<?>> reader) {
    this.name = name;
    this.mutations = new Mutations(files.stream().map(MutationRun::text).toList(), SEED);
    this.reader = reader;
  }

  /** The numbers of texts are the first argument; a second one prints a single text instead. */
  public static void main(String[] arguments) {
    int count = Integer.parseInt(arguments[0]);
    for (MutationRun run : all()) {
      if (arguments.length > 1) {
        System.out.println(run.shown(Long.parseLong(arguments[1])));
      } else {
        System.out.println(run.over(count));
        run.failures.forEach(System.out::println);
      }
    }
  }

  /** A run for each reader. */
  static List<MutationRun> all() {
    return List.of(
        new MutationRun("charts", files("demo-charts", HOSTILE), MutationRun::chart),
        new MutationRun("grooves", files("grooves"), s -> GrooveReader.read(s, "damaged")),
        new MutationRun("phrases", files("src/main/resources/phrases"), MutationRun::phrases));
  }

  /** Everything that went wrong so far, with the number of its text. */
  List<String> failures() {
    return failures;
  }

  /** Reads this many damaged texts; the figures in a line. */
  String over(int count) {
    double[] millis = new double[count];
    for (int number = 0; number < count; number++) {
      millis[number] = readOne(number);
      read += lastWasRead ? 1 : 0;
      if (millis[number] > SLOW_MILLIS) {
        millis[number] = Math.min(millis[number], Math.min(readOne(number), readOne(number)));
      }
      if (millis[number] > slowest && number > count / 100) {
        slowest = millis[number];
        slowestNumber = number;
      }
    }
    Arrays.sort(millis);
    return String.format(
        Locale.ROOT,
        "%s, seed %d: %d texts, %d read, the others refused, %d failures; median %.3f ms, 99.9%% %.2f ms,"
            + " slowest %.2f ms (text %d)",
        name,
        SEED,
        count,
        read,
        failures.size(),
        millis[count / 2],
        millis[(int) (count * 0.999)],
        slowest,
        slowestNumber);
  }

  /** Reads one text; how long that took, its problems and their reports included. */
  private double readOne(long number) {
    byte[] bytes = mutations.text(number);
    long start = System.nanoTime();
    lastWasRead = false;
    try {
      Reading<?> reading =
          TextFile.read("text", new ByteArrayInputStream(bytes)).then(reader::apply);
      check(reading);
      lastWasRead = reading.value().isPresent();
    } catch (RuntimeException | Error e) {
      failures.add(name + " text " + number + ": " + e + " at " + e.getStackTrace()[0]);
    }
    return (System.nanoTime() - start) / 1e6;
  }

  private void check(Reading<?> reading) {
    for (Diagnostic problem : reading.problems()) {
      if (problem.span().end() > problem.source().text().length()) {
        throw new AssertionError("a problem outside its text: " + problem.message());
      }
    }
    reading.problems().stream()
        .limit(MOST_REPORTS)
        .map(Diagnostic::report)
        .filter(report -> report.isBlank() || report.chars().anyMatch(c -> c < ' ' && c != '\n'))
        .forEach(
            report -> {
              throw new AssertionError("not fit to print: " + report);
            });
  }

  private static Reading<?> chart(Source source) {
    Reading<Chart> reading = ChartReader.read(source);
    reading.value().ifPresent(MutationRun::checkForm);
    return reading;
  }

  /** The bars of the form follow each other and their chords fill them. */
  private static void checkForm(Chart chart) {
    Form form = Form.of(chart);
    Beats end = Beats.ZERO;
    for (Form.Bar bar : form.bars()) {
      Beats filled =
          bar.chords().chords().stream().map(slot -> slot.beats()).reduce(Beats.ZERO, Beats::plus);
      boolean full = filled.equals(Beats.of(bar.meter().beatsPerBar()));
      if (!bar.start().equals(end) || !full) {
        throw new AssertionError("bar " + bar.number() + " is not filled");
      }
      end = bar.end();
    }
  }

  private static Reading<?> phrases(Source source) {
    Reading<List<Statement>> reading = PhraseReader.read(source);
    reading.value().ifPresent(statements -> statements.forEach(MutationRun::checkStatement));
    return reading;
  }

  /** Something is struck on the line or an eighth before it, no earlier than a bar before it. */
  private static void checkStatement(Statement statement) {
    Beats landing = statement.phrase().landing().onset();
    Beats bar = statement.meter().barLength();
    boolean lands = !landing.isBefore(Beats.of(-1, 2)) && !landing.isPositive();
    if (!lands || statement.phrase().start().plus(bar).isNegative()) {
      throw new AssertionError(statement.name() + " does not land");
    }
  }

  private String shown(long number) {
    byte[] bytes = mutations.text(number);
    return new String(bytes, StandardCharsets.UTF_8)
        + "\n----\n"
        + TextFile.read("text", new ByteArrayInputStream(bytes))
            .then(reader::apply)
            .problems()
            .stream()
            .map(Diagnostic::report)
            .toList();
  }

  private static List<Path> files(String... folders) {
    return Stream.of(folders).flatMap(folder -> files(Path.of(folder)).stream()).toList();
  }

  private static List<Path> files(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.drill.Drill;
import hingetone.drill.Exercise;
import hingetone.groove.Grooves;
import hingetone.journal.Activity;
import hingetone.journal.LogEntry;
import hingetone.journal.PracticeLog;
import hingetone.output.CommandFailure;
import hingetone.plan.ExampleChoice;
import hingetone.play.Arrangement;
import hingetone.play.Coach;
import hingetone.play.KeptSettings;
import hingetone.play.Performance;
import hingetone.sequencer.PlaySetup;
import hingetone.take.TakeFiles;
import hingetone.text.Printable;
import hingetone.text.Suggestion;
import hingetone.time.Tempo;
import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Leads through an exercise with a chart. */
@Command(
    name = "drill",
    description = {
      "Practise one thing with a chart, in rounds, at a tempo that follows you.",
      "One lap is the example, one the warm-up, then each lap is a round. With --in it is heard how",
      "it went; without, you grade each round with a key from 1 to 5. Rest at pain or numbness."
    })
final class DrillCommand implements Runnable {
  @Spec CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "KIND",
      converter = ToActivity.class,
      description = "landing, crossing, exchange, endings, offset, octave, silence or ear.")
  Activity activity;

  @Mixin ChartArguments chartArguments;
  @Mixin OutputOptions output;
  @Mixin InstrumentOption instrument;
  @Mixin ScreenOption screen;

  @Option(
      names = "--minutes",
      paramLabel = "N",
      converter = ToMinutes.class,
      description = "End after so many minutes, 1 to 60 (${DEFAULT-VALUE}).",
      defaultValue = "10")
  int minutes;

  private final Instant start = Instant.now();
  private Optional<Drill> last = Optional.empty();
  private Optional<String> trouble = Optional.empty();

  @Override
  public void run() {
    Chart chart = chartArguments.read();
    Exercise.problem(activity, chart)
        .ifPresent(
            reason -> {
              throw CommandFailure.wrongInput(reason);
            });
    output.check();
    Exercise exercise = Exercise.of(activity, chart);
    Tempo tempo = exercise.levels().get(0).chart().form().get(0).tempo();
    Coach.Lesson lesson =
        new Coach.Lesson(
            Drill.of(exercise, tempo),
            Duration.ofMinutes(minutes),
            instrument.isThere(),
            this::arrangement,
            this::keep);
    Performance performance =
        new Performance(
            arrangement(exercise.levels().get(0), Coach.examples()),
            Optional.empty(),
            (laps, listener, say) -> output.open(laps, PlaySetup.USUAL, listener, say),
            new Performance.Player(instrument.open(), new KeptSettings(Folders.config()), takes()),
            Optional.of(lesson));
    screen.show(performance, chartArguments.file.equals("-"));
    tell();
  }

  private Performance.Takes takes() {
    return new Performance.Takes(
        new TakeFiles(Folders.takes()),
        chartArguments.text(),
        chartArguments.keyShift,
        Optional.empty(),
        new PracticeLog(Folders.log()));
  }

  private Arrangement arrangement(Exercise.Level level, Optional<ExampleChoice> examples) {
    Chart chart = level.chart();
    Grooves grooves = chartArguments.grooves();
    String groove = Grooves.nameOf(chart.form().get(0).groove().orElse(Grooves.PLAIN));
    CompletableFuture<Arrangement.Music> music =
        CompletableFuture.supplyAsync(
            () ->
                new BandMusic(grooves, Optional.empty()).of(chart, chartArguments.backing(chart)));
    return Arrangement.of(chart, chartArguments.leftHanded, groove, music, examples);
  }

  /** Keeps a round in the log; where that fails it is told at the end. */
  private void keep(Drill drill) {
    last = Optional.of(drill);
    Chart chart = drill.now().chart();
    String keys =
        Form.of(chart).bars().stream()
            .map(bar -> bar.key().toString())
            .distinct()
            .collect(Collectors.joining(", "));
    trouble =
        new PracticeLog(Folders.log())
            .tryToKeep(
                new LogEntry(
                    start,
                    activity,
                    chart.title(),
                    keys,
                    Duration.between(start, Instant.now()).toSeconds(),
                    drill.ladder().cleanTwice().map(tempo -> tempo.bpm().doubleValue()),
                    drill.score()));
  }

  private void tell() {
    PrintWriter out = spec.commandLine().getOut();
    if (last.isPresent()) {
      out.println(Printable.line(last.get().result()));
      out.println(Printable.line(last.get().advice()));
    } else {
      out.println("No round was finished, so nothing is logged.");
    }
    trouble.ifPresent(words -> out.println(Printable.line(words)));
    out.flush();
  }

  /** Reads the kind of an exercise. */
  static final class ToActivity implements ITypeConverter<Activity> {
    private static final List<String> KINDS =
        Arrays.stream(Activity.values()).filter(Activity::isDrill).map(Activity::toString).toList();

    @Override
    public Activity convert(String text) {
      String word = text.toLowerCase(Locale.ROOT);
      return Activity.of(word)
          .filter(Activity::isDrill)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no exercise: I expected "
                          + String.join(", ", KINDS)
                          + Suggestion.nearest(word, KINDS)
                              .map(near -> ". Did you mean " + near + "?")
                              .orElse("")));
    }
  }

  /** Reads how long it lasts. */
  static final class ToMinutes extends WholeNumber {
    ToMinutes() {
      super(1, 60, "minutes");
    }
  }
}

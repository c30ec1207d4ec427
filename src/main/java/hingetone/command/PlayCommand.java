package hingetone.command;

import hingetone.chart.Chart;
import hingetone.groove.Grooves;
import hingetone.journal.PracticeLog;
import hingetone.output.CommandFailure;
import hingetone.plan.ExampleChoice;
import hingetone.play.Arrangement;
import hingetone.play.Arrangement.Music;
import hingetone.play.KeptSettings;
import hingetone.play.Performance;
import hingetone.sequencer.Command.Ramp;
import hingetone.sequencer.PlaySetup;
import hingetone.take.TakeFiles;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Plays a chart's backing before a screen that says what comes next. */
@Command(
    name = "play",
    description = {
      "Play the backing of a chart, lap after lap, and show what comes next.",
      "Press ? for the keys. Keep the sound low enough to talk over, and rest now and then."
    })
final class PlayCommand implements Runnable {
  @Spec CommandSpec spec;
  @Mixin ChartArguments chartArguments;
  @Mixin OutputOptions output;
  @Mixin InstrumentOption instrument;
  @Mixin ScreenOption screen;

  @Option(
      names = "--laps",
      paramLabel = "N",
      converter = ChartArguments.ToLaps.class,
      description = "Stop after so many laps.")
  Optional<Integer> laps = Optional.empty();

  @Option(
      names = "--ramp",
      paramLabel = "FROM:TO:STEP:LAPS",
      converter = ToRamp.class,
      description = "Go from one tempo to another in steps, one every so many laps: 80:120:5:2.")
  Optional<Ramp> ramp = Optional.empty();

  @Option(names = "--no-count-in", description = "Begin with bar 1.")
  boolean noCountIn;

  @Option(
      names = "--take",
      paramLabel = "NAME",
      description = "Record what comes in at --in from the count-in on, as a take of this name.")
  Optional<String> take = Optional.empty();

  @Option(
      names = "--show-me",
      paramLabel = "WHICH",
      arity = "0..1",
      converter = ExamplePhrases.ToShown.class,
      preprocessor = ExamplePhrases.AllUnlessStated.class,
      description = {
        "Play example phrases over the backing:",
        "all (unless stated), statements, crossings or next-crossing."
      })
  Optional<ExampleChoice> showMe = Optional.empty();

  @Override
  public void run() {
    Chart read = chartArguments.read();
    Chart chart = noCountIn ? read.withCountIn(0) : read;
    output.check();
    Grooves grooves = chartArguments.grooves();
    PlaySetup setup =
        laps.map(n -> PlaySetup.USUAL.withLaps(n).withEnding(1)).orElse(PlaySetup.USUAL);
    String groove = Grooves.nameOf(chart.form().get(0).groove().orElse(Grooves.PLAIN));
    CompletableFuture<Music> music =
        CompletableFuture.supplyAsync(
            () -> new BandMusic(grooves, laps).of(chart, chartArguments.backing(chart)));
    Performance performance =
        new Performance(
            Arrangement.of(chart, chartArguments.leftHanded, groove, music, showMe),
            ramp,
            (lap, listener, say) -> output.open(lap, setup, listener, say),
            new Performance.Player(instrument.open(), new KeptSettings(Folders.config()), takes()),
            Optional.empty());
    screen.show(performance, chartArguments.file.equals("-"));
  }

  /** Takes are kept with the chart's own text, so keys that the options move count from it. */
  private Performance.Takes takes() {
    take.flatMap(TakeFiles::problemOf)
        .ifPresent(
            problem -> {
              throw CommandFailure.wrongInput("--take " + take.get() + ": " + problem + ".");
            });
    if (take.isPresent() && !instrument.isThere()) {
      throw CommandFailure.wrongInput(
          "--take goes with --in PORT or --hear INPUT, which say what to record.");
    }
    return new Performance.Takes(
        new TakeFiles(Folders.takes()),
        chartArguments.text(),
        chartArguments.keyShift,
        take,
        new PracticeLog(Folders.log()));
  }

  /** Reads a ramp of the tempo. */
  static final class ToRamp implements ITypeConverter<Ramp> {
    @Override
    public Ramp convert(String text) {
      String[] parts = text.split(":", -1);
      if (parts.length != 4) {
        throw new TypeConversionException(
            "\"" + text + "\" is no ramp: I expected FROM:TO:STEP:LAPS, such as 80:120:5:2");
      }
      ChartArguments.ToTempo tempo = new ChartArguments.ToTempo();
      int step = WholeNumber.read(parts[2], 1, 100, "a step");
      int laps = WholeNumber.read(parts[3], 1, 100, "laps");
      return new Ramp(
          tempo.convert(parts[0]), tempo.convert(parts[1]), BigDecimal.valueOf(step), laps);
    }
  }
}

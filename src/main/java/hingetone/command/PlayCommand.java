package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.groove.Grooves;
import hingetone.journal.PracticeLog;
import hingetone.output.CommandFailure;
import hingetone.phrase.maker.LeadPart;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Prompt;
import hingetone.play.Arrangement;
import hingetone.play.Arrangement.Music;
import hingetone.play.KeptSettings;
import hingetone.play.Performance;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.PortInput;
import hingetone.port.Ports;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.sequencer.Command.Ramp;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.take.TakeFiles;
import hingetone.text.reading.Source;
import hingetone.time.Position;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Predicate;
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
      names = "--in",
      paramLabel = "PORT",
      description =
          "A MIDI port with your guitar, keyboard or foot pedal: its number, or a part of its name.")
  Optional<String> in = Optional.empty();

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

  @Option(
      names = "--plain",
      description = "Lines of text instead of the screen: one for each event.")
  boolean plain;

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
        CompletableFuture.supplyAsync(() -> music(chart, grooves, chartArguments.backing(chart)));
    Performance performance =
        new Performance(
            Arrangement.of(chart, chartArguments.leftHanded, groove, music, showMe),
            ramp,
            (lap, listener, say) -> output.open(lap, setup, listener, say),
            in.map(PlayCommand::instrument).orElse((player, events) -> () -> {}),
            new KeptSettings(Folders.config()),
            takes());
    show(performance);
  }

  /** Takes are kept with the chart's own text, so keys that the options move count from it. */
  private Performance.Takes takes() {
    take.flatMap(TakeFiles::problemOf)
        .ifPresent(
            problem -> {
              throw CommandFailure.wrongInput("--take " + take.get() + ": " + problem + ".");
            });
    if (take.isPresent() && in.isEmpty()) {
      throw CommandFailure.wrongInput("--take goes with --in PORT, which says what to record.");
    }
    return new Performance.Takes(
        new TakeFiles(Folders.takes()),
        chartArguments.text(),
        chartArguments.keyShift,
        take,
        new PracticeLog(Folders.log()));
  }

  private void show(Performance performance) {
    boolean fromInput = chartArguments.file.equals("-");
    if (plain || fromInput || !TerminalScreen.isPossible()) {
      performance.inLines(spec.commandLine().getOut(), !fromInput);
      return;
    }
    try {
      performance.onScreen();
    } catch (IOException e) {
      throw CommandFailure.couldNot("This terminal cannot be used: " + e.getMessage());
    }
  }

  private Music music(Chart chart, Grooves grooves, Backing backing) {
    String name = backing.groove(chart.form().get(0)).name();
    LapSource band = laps.<LapSource>map(n -> l -> backing.lapOf(l, n)).orElse(backing::lap);
    return new Music(
        name,
        (shown, from, position) -> {
          Chart there = chart.withPosition(position);
          return shown.map(w -> withExamples(there, backing, band, w, from)).orElse(band);
        },
        () -> next(chart, grooves, name));
  }

  /** The band with example phrases on a channel of their own, up to the ending. */
  private LapSource withExamples(
      Chart chart, Backing backing, LapSource band, ExampleChoice which, Position from) {
    LeadPart lead = ExamplePhrases.of(chart, chartArguments.grooves()).lead(backing::played);
    Predicate<Prompt> shown = which.of(lead.plan(), from);
    return number ->
        laps.filter(n -> number > n).isPresent()
            ? band.lap(number)
            : band.lap(number).with(lead.ofLap(number, shown));
  }

  /** The chart in the next groove, by name, that fits all its meters. */
  private Optional<Music> next(Chart chart, Grooves grooves, String name) {
    List<String> names = grooves.names();
    int at = names.indexOf(name);
    for (int i = 1; i < names.size(); i++) {
      Chart other = chart.withGroove(names.get((at + i + names.size()) % names.size()));
      Optional<Backing> band = Backing.read(other, grooves, new Source("", "")).value();
      if (band.isPresent()) {
        return Optional.of(music(other, grooves, band.get()));
      }
    }
    return Optional.empty();
  }

  private static Performance.Instrument instrument(String wanted) {
    Ports.Search search = Ports.find(wanted, Port.Direction.INPUT);
    Port found = search.port().orElseThrow(() -> CommandFailure.wrongInput(search.problem()));
    return (player, events) -> {
      try {
        return PortInput.open(found, PortInput.Filter.ALL, player, events)::close;
      } catch (PortFailure e) {
        throw CommandFailure.couldNot(e.getMessage());
      }
    };
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

package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.exchange.Lead;
import hingetone.exchange.Maker;
import hingetone.exchange.Plan;
import hingetone.exchange.Prompt;
import hingetone.exchange.Shown;
import hingetone.handout.MusicXml;
import hingetone.handout.TabSheet;
import hingetone.score.Part;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.text.Printable;
import hingetone.text.Suggestion;
import hingetone.time.Position;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes a chart's backing as a file, its kind chosen by the file's ending. */
@Command(
    name = "render",
    description = {
      "Write a chart as a file: its backing as .mid (MIDI, format 1) or .wav (sound),",
      "its plan with example phrases as .musicxml (notation and tab) or .txt (tab)."
    })
final class RenderCommand implements Runnable {
  @Spec CommandSpec spec;
  @Mixin ChartArguments chartArguments;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      required = true,
      description = "The file to write; its ending says what it is.")
  Path file;

  @Option(
      names = "--laps",
      paramLabel = "N",
      converter = ChartArguments.ToLaps.class,
      description = "How many laps (${DEFAULT-VALUE}); after more than one the band ends.",
      defaultValue = "1")
  int laps;

  @Option(names = "--no-count-in", description = "Begin with bar 1.")
  boolean noCountIn;

  @Mixin SoundFontOption soundFont;

  @Option(names = "--stems", description = "With .wav: a file for each part beside the whole.")
  boolean stems;

  @Option(
      names = "--lead",
      paramLabel = "WHICH",
      converter = ExamplePhrases.ToShown.class,
      description = {
        "Add example phrases on a track of their own:",
        "all, statements, crossings or next-crossing (the first)."
      })
  Optional<Shown> lead = Optional.empty();

  @Override
  public void run() {
    soundFont.check();
    Runnable write = writer();
    write.run();
  }

  /** What writes the wanted kind of file; an ending that is none is told before any work. */
  private Runnable writer() {
    Map<String, Runnable> writers = new LinkedHashMap<>();
    writers.put(".mid", () -> say(rendered().writeMidi(file)));
    writers.put(".wav", this::writeSound);
    writers.put(".musicxml", () -> writeSheet(MusicXml::of));
    writers.put(".txt", () -> writeSheet(TabSheet::of));
    String name = file.toString().toLowerCase(Locale.ROOT);
    String ending = name.substring(Math.max(name.lastIndexOf('.'), name.lastIndexOf('/') + 1));
    Runnable writer = writers.get(ending);
    if (writer == null) {
      List<String> known = List.copyOf(writers.keySet());
      String hint =
          Suggestion.nearest(ending, known).map(e -> " Did you mean " + e + "?").orElse("");
      throw CommandFailure.wrongInput(
          file + " has no ending I can write: I know " + String.join(", ", known) + "." + hint);
    }
    if (stems && !ending.equals(".wav")) {
      throw CommandFailure.wrongInput("--stems goes with a .wav file.");
    }
    return writer;
  }

  /** A sheet of the plan's example phrases. */
  private interface Sheet {
    String of(Chart chart, Plan plan, Maker maker, int laps);
  }

  private void writeSheet(Sheet sheet) {
    Chart read = chartArguments.read();
    Chart chart = noCountIn ? read.withCountIn(0) : read;
    ExamplePhrases phrases = ExamplePhrases.of(chart, chartArguments.grooves());
    String text = sheet.of(chart, phrases.plan(), phrases.maker(), laps);
    try (Export export = Export.of(List.of(file))) {
      Files.writeString(export.unfinished().get(0), text);
      export.finish();
    } catch (IOException e) {
      throw RenderedScore.couldNotWrite(file, e);
    }
    say(file + ": " + phrases.plan().form().bars().size() * laps + " bars");
  }

  private void writeSound() {
    RenderedScore score = rendered();
    SoundBank bank = soundFont.bankFor(score.score());
    bank.silentIn(score.score()).ifPresent(spec.commandLine().getErr()::println);
    Progress progress = Progress.on(Main.ungatedErr(spec));
    score.writeWav(file, stems, bank, progress).forEach(this::say);
  }

  private RenderedScore rendered() {
    Chart chart = chartArguments.read();
    Chart counted = noCountIn ? chart.withCountIn(0) : chart;
    return new RenderedScore(score(counted, chartArguments.backing(counted)));
  }

  private Score score(Chart chart, Backing backing) {
    List<Score> all = new ArrayList<>();
    Optional<IntFunction<Part>> leads = lead.map(which -> lead(chart, backing, which));
    for (int lap = 1; lap <= laps; lap++) {
      Score score = laps > 1 && lap == laps ? backing.lastLap(lap) : backing.lap(lap);
      int number = lap;
      all.add(leads.map(l -> score.with(l.apply(number))).orElse(score));
    }
    return Score.inTurn(all);
  }

  /** The example phrases of each lap. */
  private IntFunction<Part> lead(Chart chart, Backing backing, Shown which) {
    Lead phrases = ExamplePhrases.of(chart, chartArguments.grooves()).lead(backing::played);
    Predicate<Prompt> shown = which.of(phrases.plan(), Position.of(1 - chart.countIn(), 1));
    return lap -> phrases.ofLap(lap, shown);
  }

  private void say(String line) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(Printable.line(line));
    out.flush();
  }
}

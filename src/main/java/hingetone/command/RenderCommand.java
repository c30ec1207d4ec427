package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.handout.MusicXml;
import hingetone.handout.TabSheet;
import hingetone.midi.MidiFile;
import hingetone.output.CommandFailure;
import hingetone.output.FileKind;
import hingetone.output.Progress;
import hingetone.output.RenderedScore;
import hingetone.phrase.maker.LeadPart;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.sound.file.WavFile;
import hingetone.text.Stamp;
import hingetone.time.Position;
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
      "Write a chart as a file: sound, MIDI, notation or tab.",
      "Its backing as .mid (MIDI, format 1) or .wav (sound),",
      "its plan with example phrases as .musicxml (notation and tab) or .txt (tab)."
    })
final class RenderCommand implements Runnable {
  @Spec CommandSpec spec;
  @Mixin ChartArguments chartArguments;

  @Mixin OutputFile output;

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
  Optional<ExampleChoice> lead = Optional.empty();

  /** A sheet of the plan's example phrases. */
  private interface Sheet {
    String of(Chart chart, Plan plan, PhraseMaker maker, int laps);
  }

  @Override
  public void run() {
    FileKind kind = output.kind(List.of(FileKind.values()));
    if (stems && (kind != FileKind.WAV || !output.isFile())) {
      throw CommandFailure.wrongInput("--stems goes with a .wav file.");
    }
    Chart read = chartArguments.read();
    Chart chart = noCountIn ? read.withCountIn(0) : read;
    switch (kind) {
      case MID -> writeMidi(chart);
      case WAV -> writeSound(chart);
      case MUSICXML -> writeSheet(chart, MusicXml.STAMP, MusicXml::of);
      case TXT -> writeSheet(chart, TabSheet.STAMP, TabSheet::of);
    }
  }

  private void writeSheet(Chart chart, Stamp stamp, Sheet sheet) {
    ExamplePhrases phrases = ExamplePhrases.of(chart, chartArguments.grooves());
    write(
        chartArguments.inputs(chart),
        stamp,
        Map.of(),
        places -> {
          String text = sheet.of(chart, phrases.plan(), phrases.maker(), laps);
          Files.writeString(places.get(0), text);
          return phrases.plan().form().bars().size() * laps + " bars";
        });
  }

  private void writeMidi(Chart chart) {
    RenderedScore score = rendered(chart);
    write(
        chartArguments.inputs(chart),
        MidiFile.STAMP,
        Map.of(),
        places -> score.writeMidi(places.get(0)));
  }

  private void writeSound(Chart chart) {
    RenderedScore score = rendered(chart);
    List<Path> inputs = new ArrayList<>(chartArguments.inputs(chart));
    inputs.addAll(soundFont.files());
    Map<Path, Stamp> beside = new LinkedHashMap<>();
    List<Role> alone = stems ? score.roles() : List.of();
    alone.forEach(role -> beside.put(stem(role), WavFile.Samples.FLOAT.stamp()));
    Progress progress = Progress.on(Main.ungatedErr(spec));
    write(
        inputs,
        WavFile.Samples.SHORT.stamp(),
        beside,
        places -> {
          Map<Role, Path> parts = new LinkedHashMap<>();
          alone.forEach(role -> parts.put(role, places.get(1 + parts.size())));
          SoundBank bank = soundFont.bankFor(score.score());
          bank.silentIn(score.score()).ifPresent(spec.commandLine().getErr()::println);
          return score.writeWav(places.get(0), parts, bank, progress);
        });
  }

  private void write(
      List<Path> inputs, Stamp stamp, Map<Path, Stamp> beside, OutputFile.Writing writing) {
    OutputFile.Writing checked =
        places -> {
          soundFont.check();
          return writing.into(places);
        };
    output.tell(output.write(inputs, stamp, beside, checked));
  }

  /** {@code song-bass.wav} for song.wav. */
  private Path stem(Role role) {
    Path file = output.file.orElseThrow();
    // A root has no name; it is refused as the folder that it is.
    String name = String.valueOf(file.getFileName()).replaceFirst("\\.[^.]*$", "");
    return file.resolveSibling(name + "-" + role.title().toLowerCase(Locale.ROOT) + ".wav");
  }

  private RenderedScore rendered(Chart chart) {
    return new RenderedScore(score(chart, chartArguments.backing(chart)));
  }

  private Score score(Chart chart, Backing backing) {
    List<Score> all = new ArrayList<>();
    Backing band = backing.over(laps);
    Optional<IntFunction<Part>> leads = lead.map(which -> lead(chart, backing, which));
    for (int lap = 1; lap <= laps; lap++) {
      Score score = laps > 1 && lap == laps ? band.lastLap(lap) : band.lap(lap);
      int number = lap;
      all.add(leads.map(l -> score.with(l.apply(number))).orElse(score));
    }
    return Score.inTurn(all);
  }

  /** The example phrases of each lap. */
  private IntFunction<Part> lead(Chart chart, Backing backing, ExampleChoice which) {
    LeadPart phrases = ExamplePhrases.of(chart, chartArguments.grooves()).lead(backing::played);
    Predicate<Prompt> shown = which.of(phrases.plan(), Position.of(1 - chart.countIn(), 1));
    return lap -> phrases.ofLap(lap, shown);
  }
}

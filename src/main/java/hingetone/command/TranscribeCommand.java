package hingetone.command;

import hingetone.chart.Chart;
import hingetone.hearing.Transcriber;
import hingetone.hearing.Transcription;
import hingetone.hearing.signal.EchoFilter;
import hingetone.hearing.signal.EchoFinder;
import hingetone.hearing.signal.Resampler;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.output.CommandFailure;
import hingetone.output.FileKind;
import hingetone.output.Progress;
import hingetone.print.HeardBars;
import hingetone.print.Json;
import hingetone.print.TranscriptionJson;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundReader;
import hingetone.text.FileNames;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a recording of a guitar down as notes. */
@Command(
    name = "transcribe",
    description = {
      "Write a recording of one guitar down as notes.",
      "As .mid (with its bends), as .musicxml (notation and tab), as .txt (tab with lengths), or as JSON.",
      "Reads WAV, AIFF and FLAC."
    })
final class TranscribeCommand implements Runnable {
  @Spec CommandSpec spec;

  @Parameters(paramLabel = "SOUND", description = "The recording: WAV, AIFF or FLAC.")
  String sound;

  @Mixin OutputFile output;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Option(
      names = "--channel",
      paramLabel = "N",
      converter = ToChannel.class,
      description = "Listen to this channel only, from 1; to the mean of all unless stated.")
  Optional<Integer> channel = Optional.empty();

  @Option(
      names = "--tuning",
      paramLabel = "TUNING",
      converter = ChartArguments.ToTuning.class,
      description = {
        "A name, or the open strings from low to high: \"D A D G A D\";",
        "unless stated the chart's, or standard."
      })
  Optional<Tuning> tuning = Optional.empty();

  @Option(
      names = "--capo",
      paramLabel = "FRET",
      converter = ChartArguments.ToCapo.class,
      description = "The fret of the capo, 0 to 12; unless stated the chart's, or none.")
  Optional<Integer> capo = Optional.empty();

  @Option(
      names = "--chart",
      paramLabel = "CHART",
      description = "What was played over: gives each note its bar, its beat and its spelling.")
  Optional<String> chart = Optional.empty();

  @Option(
      names = "--offset",
      paramLabel = "SECONDS",
      converter = ToOffset.class,
      description = "With --chart: where bar 1 is in the recording; found unless stated.")
  Optional<Double> offset = Optional.empty();

  @Override
  public void run() {
    if (output.file.isEmpty() && !json) {
      throw CommandFailure.wrongInput("Say where to write with -o FILE, or take --json.");
    }
    if (output.isStandardOutput() && json) {
      throw CommandFailure.wrongInput("Only one of --json and -o - goes to standard output.");
    }
    Optional<Chart> read = chart.map(ChartPlaces::read);
    if (offset.isPresent() && read.isEmpty()) {
      throw CommandFailure.wrongInput("--offset goes with --chart.");
    }
    if (output.file.isEmpty()) {
      hear(read);
      return;
    }
    List<String> lines = write(output.kind(HeardRecording.KINDS), read);
    if (!json) {
      output.tell(lines);
    }
  }

  /** Writes it down, says what is doubtful, and gives all of it as JSON where that is wanted. */
  private HeardRecording hear(Optional<Chart> read) {
    Fretboard neck =
        Fretboard.of(
            tuning.or(() -> read.map(Chart::tuning)).orElse(Tuning.STANDARD),
            capo.or(() -> read.map(Chart::capo)).orElse(0));
    Transcription written = written(neck);
    written.doubts().forEach(this::warn);
    Optional<HeardBars> bars = read.map(c -> ChartPlaces.of(c, written, offset));
    if (json) {
      out(Json.text(TranscriptionJson.tree(written, bars)));
    }
    return new HeardRecording(FileNames.path(sound), written, neck, bars);
  }

  private List<String> write(FileKind kind, Optional<Chart> read) {
    List<Path> inputs = new ArrayList<>(List.of(FileNames.path(sound)));
    chart.map(FileNames::path).ifPresent(inputs::add);
    return output.write(
        inputs,
        HeardRecording.stamp(kind),
        Map.of(),
        places -> {
          HeardRecording heard = hear(read);
          try (OutputStream out = Files.newOutputStream(places.get(0))) {
            return heard.write(kind, out);
          }
        });
  }

  private Transcription written(Fretboard neck) {
    Progress progress = Progress.on(spec.commandLine().getErr());
    try {
      Optional<EchoFilter> echoes = echoes(progress);
      try (SoundReader reader = SoundReader.open(FileNames.path(sound), channel)) {
        Transcriber transcriber = new Transcriber(reader.rate(), echoes);
        for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
          transcriber.take(block);
          progress.accept(0.1 + 0.9 * reader.done());
        }
        progress.accept(1);
        reader.missing().ifPresent(this::warn);
        return transcriber.finish(neck);
      }
    } catch (SoundFailure e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  private Optional<EchoFilter> echoes(Progress progress) throws SoundFailure {
    try (SoundReader reader = SoundReader.open(FileNames.path(sound), channel)) {
      Resampler resampler = new Resampler(reader.rate());
      EchoFinder finder = new EchoFinder();
      for (float[] block = reader.next(); block.length > 0; block = reader.next()) {
        finder.take(resampler.next(block));
        progress.accept(0.1 * reader.done());
      }
      return finder.found();
    }
  }

  private void warn(String doubt) {
    PrintWriter err = spec.commandLine().getErr();
    err.println(doubt);
    err.flush();
  }

  private void out(String text) {
    PrintWriter out = spec.commandLine().getOut();
    out.print(text);
    out.flush();
  }

  /** Reads where bar 1 is, in seconds; before the recording's start when negative. */
  static final class ToOffset extends DecimalNumber {
    ToOffset() {
      super("place in a recording", "seconds such as 2.35");
    }
  }

  /** Reads the number of a channel. */
  static final class ToChannel extends WholeNumber {
    ToChannel() {
      super(1, 64, "channels");
    }
  }
}

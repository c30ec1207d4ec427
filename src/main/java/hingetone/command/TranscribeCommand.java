package hingetone.command;

import hingetone.chart.Chart;
import hingetone.hearing.Transcription;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.output.CommandFailure;
import hingetone.output.FileKind;
import hingetone.output.Progress;
import hingetone.print.HeardBars;
import hingetone.print.Json;
import hingetone.print.TranscriptionJson;
import hingetone.reviewing.ChartPlaces;
import hingetone.reviewing.SoundTake;
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
    return new SoundTake(FileNames.path(sound), channel).written(neck, progress, this::warn);
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

package hingetone.command;

import hingetone.chart.Chart;
import hingetone.hearing.HeardKey;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcriber;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.hearing.signal.EchoFilter;
import hingetone.hearing.signal.EchoFinder;
import hingetone.hearing.signal.Resampler;
import hingetone.midi.BentLine;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.output.CommandFailure;
import hingetone.output.FileKind;
import hingetone.output.HeardMidi;
import hingetone.output.Progress;
import hingetone.print.HeardTab;
import hingetone.print.Json;
import hingetone.print.TranscriptionJson;
import hingetone.sound.SoundFailure;
import hingetone.sound.file.SoundReader;
import hingetone.text.FileNames;
import hingetone.theory.Key;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Writes a recording of a guitar down as notes. */
@Command(
    name = "transcribe",
    description = {
      "Write a recording of one guitar down as notes: as .mid (with its bends),",
      "as .txt (tab with lengths), or as JSON. Reads WAV, AIFF and FLAC."
    })
final class TranscribeCommand implements Runnable {
  private static final int TAB_WIDTH = 100;

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
      description = "A name, or the open strings from low to high: \"D A D G A D\".")
  Tuning tuning = Tuning.STANDARD;

  @Option(
      names = "--capo",
      paramLabel = "FRET",
      converter = ChartArguments.ToCapo.class,
      description = "The fret of the capo, 0 to 12.")
  int capo;

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

  /** Writes a transcription in one form. */
  private interface Form {
    void write(Transcription written, OutputStream output) throws IOException;
  }

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
    List<String> lines = write(output.kind(List.of(FileKind.MID, FileKind.TXT)), read);
    if (!json) {
      output.tell(lines);
    }
  }

  /** A recording written down, and where its notes lie in a chart. */
  private record Heard(Transcription written, Optional<ChartPlaces> places) {}

  /** Writes it down, says what is doubtful, and gives all of it as JSON where that is wanted. */
  private Heard hear(Optional<Chart> read) {
    Transcription written = written();
    written.doubts().forEach(this::warn);
    Heard heard = new Heard(written, read.map(c -> ChartPlaces.of(c, written, offset)));
    if (json) {
      out(Json.text(tree(written, heard.places())));
    }
    return heard;
  }

  private List<String> write(FileKind kind, Optional<Chart> read) {
    boolean midi = kind == FileKind.MID;
    Form form = midi ? this::writeMidi : this::writeTab;
    List<Path> inputs = new ArrayList<>(List.of(FileNames.path(sound)));
    chart.map(FileNames::path).ifPresent(inputs::add);
    return output.write(
        inputs,
        midi ? BentLine.STAMP : HeardTab.STAMP,
        Map.of(),
        places -> {
          Heard heard = hear(read);
          try (OutputStream out = Files.newOutputStream(places.get(0))) {
            form.write(heard.written(), out);
          }
          return summary(heard.written()) + heard.places().map(p -> ", " + p.summary()).orElse("");
        });
  }

  private void writeMidi(Transcription written, OutputStream out) throws IOException {
    HeardMidi.write(FileNames.path(sound), written, out);
  }

  private Transcription written() {
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
        return transcriber.finish(Fretboard.of(tuning, capo));
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

  private void writeTab(Transcription written, OutputStream output) throws IOException {
    Fretboard neck = Fretboard.of(tuning, capo);
    String head = sound + "\n" + summary(written) + ", tuning " + tuning + "\n";
    String rows = String.join("\n", HeardTab.of(written, neck, TAB_WIDTH));
    String page = head + HeardTab.LEGEND + "\n" + rows + "\n" + HeardTab.STAMP.open() + "\n";
    output.write(page.getBytes(StandardCharsets.UTF_8));
  }

  private static String summary(Transcription written) {
    return String.format(
        Locale.ROOT,
        "%d notes in %.1f s, %+.0f cents from A = 440 Hz",
        written.notes().size(),
        written.seconds(),
        written.tuningCents());
  }

  private static Key key(Transcription written) {
    return HeardKey.of(written.notes().stream().map(Placed::note).toList());
  }

  private static Map<String, Object> tree(Transcription written, Optional<ChartPlaces> places) {
    Key heard = key(written);
    return TranscriptionJson.tree(
        written,
        note -> name(places.map(p -> p.key(note)).orElse(heard), note),
        note -> places.map(p -> p.position(note)));
  }

  private static String name(Key key, HeardNote note) {
    return key.spell((int) Math.round(note.reached())).toString();
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
  static final class ToOffset implements ITypeConverter<Double> {
    @Override
    public Double convert(String text) {
      if (!text.matches("-?[0-9]{1,5}(\\.[0-9]{1,6})?")) {
        throw new TypeConversionException(
            "\"" + text + "\" is no place in a recording: I expected seconds such as 2.35");
      }
      return Double.valueOf(text);
    }
  }

  /** Reads the number of a channel. */
  static final class ToChannel extends WholeNumber {
    ToChannel() {
      super(1, 64, "channels");
    }
  }
}

package hingetone.command;

import hingetone.handout.MusicXml;
import hingetone.hearing.Transcription;
import hingetone.midi.BentLine;
import hingetone.neck.Fretboard;
import hingetone.output.FileKind;
import hingetone.output.HeardMidi;
import hingetone.print.HeardBars;
import hingetone.print.HeardTab;
import hingetone.text.Stamp;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A recording written down, ready to be put into a file.
 *
 * @param sound the recording's file
 * @param written what was heard
 * @param neck what it was played on
 * @param bars its bars, where there is a chart
 */
record HeardRecording(Path sound, Transcription written, Fretboard neck, Optional<HeardBars> bars) {
  /** What it can be written as. */
  static final List<FileKind> KINDS = List.of(FileKind.MID, FileKind.MUSICXML, FileKind.TXT);

  private static final int TAB_WIDTH = 100;

  /** What a file of a kind bears at its end. */
  static Stamp stamp(FileKind kind) {
    return switch (kind) {
      case MID -> BentLine.STAMP;
      case MUSICXML -> MusicXml.STAMP;
      default -> HeardTab.STAMP;
    };
  }

  /**
   * Writes it to a stream, which stays open.
   *
   * @return what it holds, for people
   */
  String write(FileKind kind, OutputStream output) throws IOException {
    if (kind == FileKind.MID) {
      HeardMidi.write(sound, written, bars, output);
      return summary(bars);
    }
    Optional<HeardBars> writtenIn = kind == FileKind.MUSICXML ? Optional.of(anyBars()) : bars;
    String page =
        kind == FileKind.MUSICXML
            ? MusicXml.of(sound.getFileName().toString(), neck, anyBars())
            : tab();
    output.write(page.getBytes(StandardCharsets.UTF_8));
    return summary(writtenIn);
  }

  /** Notation has bars with and without a chart. */
  private HeardBars anyBars() {
    return bars.orElseGet(() -> HeardBars.withoutChart(written));
  }

  private String tab() {
    String head = sound + "\n" + summary(bars) + ", tuning " + neck.tuning() + "\n";
    String rows = String.join("\n", HeardTab.of(written, neck, bars, TAB_WIDTH));
    return head + HeardTab.LEGEND + "\n" + rows + "\n" + HeardTab.STAMP.open() + "\n";
  }

  private String summary(Optional<HeardBars> writtenIn) {
    return String.format(
            Locale.ROOT,
            "%d notes in %.1f s, %+.0f cents from A = 440 Hz",
            written.notes().size(),
            written.seconds(),
            written.tuningCents())
        + writtenIn.map(b -> ", " + b.summary()).orElse("");
  }
}

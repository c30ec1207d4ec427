package hingetone.take;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.midi.MidiEvents;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * What a list says of a take.
 *
 * @param name its name
 * @param chart the title of its chart; empty where the chart is missing or cannot be read
 * @param seconds how long it lasts
 * @param notes how many notes were played
 * @param kept when it was kept
 */
public record TakeSummary(
    String name, Optional<String> chart, double seconds, int notes, Instant kept) {

  /**
   * Reads a take's files.
   *
   * @throws IOException when its notes are missing or cannot be read
   */
  public static TakeSummary of(TakeFiles files, String name) throws IOException {
    Path notes = files.file(name, TakeFiles.NOTES);
    try {
      Sequence sequence = MidiSystem.getSequence(notes.toFile());
      int struck = 0;
      for (Track track : sequence.getTracks()) {
        for (int i = 0; i < track.size(); i++) {
          boolean strikes =
              track.get(i).getMessage() instanceof ShortMessage message
                  && MidiEvents.isNoteOn(message);
          struck += strikes ? 1 : 0;
        }
      }
      double seconds = sequence.getMicrosecondLength() / 1e6;
      Instant kept = Files.getLastModifiedTime(notes).toInstant();
      return new TakeSummary(name, title(files, name), seconds, struck, kept);
    } catch (InvalidMidiDataException | RuntimeException e) {
      // The JDK's reader throws whatever a broken file makes it meet.
      throw new IOException(notes + " is no MIDI file: " + e.getMessage(), e);
    }
  }

  private static Optional<String> title(TakeFiles files, String name) throws IOException {
    Path chart = files.file(name, TakeFiles.CHART);
    return Files.isReadable(chart)
        ? ChartReader.read(new Source("", Files.readString(chart))).value().map(Chart::title)
        : Optional.empty();
  }
}

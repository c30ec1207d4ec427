package hingetone.take;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;

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
    TakeReader file = TakeReader.read(notes.toFile());
    Instant kept = Files.getLastModifiedTime(notes).toInstant();
    return new TakeSummary(name, title(files, name), file.seconds(), file.notes().size(), kept);
  }

  private static Optional<String> title(TakeFiles files, String name) throws IOException {
    Path chart = files.file(name, TakeFiles.CHART);
    return Files.isReadable(chart)
        ? ChartReader.read(new Source("", Files.readString(chart))).value().map(Chart::title)
        : Optional.empty();
  }
}

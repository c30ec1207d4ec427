package hingetone.review;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.take.TakeReader;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The take beside the tests, composed for them. */
final class Evening {
  static final Path TAKES = Path.of("src/test/resources/takes");
  static final Path NOTES = TAKES.resolve("evening.mid");

  private Evening() {}

  static Chart chart() throws IOException {
    String text = Files.readString(TAKES.resolve("evening.yaml"));
    return ChartReader.read(new Source("", text)).value().orElseThrow();
  }

  static Played played() throws IOException {
    return Played.of(TakeReader.read(NOTES.toFile()), chart(), 1, 0);
  }

  static Review review() throws IOException {
    return Review.of(played(), chart());
  }
}

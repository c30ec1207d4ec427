package hingetone.review;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.hearing.Technique;
import hingetone.take.Handling;
import hingetone.take.PlacedNote;
import hingetone.take.TakeReader;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The take beside the tests, composed for them. */
public final class Evening {
  public static final Path TAKES = Path.of("src/test/resources/takes");
  public static final Path NOTES = TAKES.resolve("evening.mid");

  private Evening() {}

  public static Chart chart() throws IOException {
    String text = Files.readString(TAKES.resolve("evening.yaml"));
    return ChartReader.read(new Source("", text)).value().orElseThrow();
  }

  public static Played played() throws IOException {
    return Played.of(TakeReader.read(NOTES.toFile()), chart(), 1, 0);
  }

  public static Review review() throws IOException {
    return Review.of(played(), chart());
  }

  /** The same, its first note pushed up by a tone on the third string, the second let down. */
  public static Review bent() throws IOException {
    Played played = played();
    List<PlacedNote> notes = new ArrayList<>(played.notes());
    notes.set(0, bent(notes.get(0), Technique.BEND, 0, 2));
    notes.set(1, bent(notes.get(1), Technique.PREBEND, 2, 0));
    return Review.of(new Played(played.bars(), notes, played.tempos()), chart());
  }

  private static PlacedNote bent(PlacedNote note, Technique technique, int from, int to) {
    double key = note.struck();
    List<Handling.Point> curve =
        List.of(
            new Handling.Point(note.at(), key + from),
            new Handling.Point(note.at() + 0.1, key + to));
    Handling handling = new Handling(technique, false, Optional.of(3), curve);
    return new PlacedNote(note.at(), note.end(), key + from, key + to, 90, handling);
  }
}

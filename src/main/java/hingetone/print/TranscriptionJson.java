package hingetone.print;

import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Spot;
import hingetone.text.Choice;
import hingetone.time.Position;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A recording written down, for other programs. */
public final class TranscriptionJson {
  private TranscriptionJson() {}

  /**
   * The whole answer.
   *
   * @param name what a note is called in the key that holds there
   * @param position where a note is in the chart, when there is one
   */
  public static Map<String, Object> tree(
      Transcription written,
      Function<HeardNote, String> name,
      Function<HeardNote, Optional<Position>> position) {
    List<Map<String, Object>> notes =
        written.notes().stream().map(placed -> note(placed, name, position)).toList();
    return Json.object(
        "version",
        1,
        "seconds",
        rounded(written.seconds(), 1000),
        "tuningCents",
        rounded(written.tuningCents(), 10),
        "notes",
        notes);
  }

  private static Map<String, Object> note(
      Placed placed,
      Function<HeardNote, String> name,
      Function<HeardNote, Optional<Position>> position) {
    HeardNote note = placed.note();
    return Json.object(
        "at",
        rounded(note.at(), 10_000),
        "end",
        rounded(note.end(), 10_000),
        "note",
        name.apply(note),
        "struck",
        rounded(note.struck(), 1000),
        "reached",
        rounded(note.reached(), 1000),
        "technique",
        Choice.word(note.technique()),
        "vibrato",
        note.vibrato(),
        "string",
        placed.spot().map(Spot::string),
        "fret",
        placed.spot().map(Spot::fret),
        "confidence",
        rounded(note.certainty(), 1000),
        "position",
        position.apply(note).map(Json::position));
  }

  private static double rounded(double value, double parts) {
    return Math.round(value * parts) / parts;
  }
}

package hingetone.print;

import hingetone.hearing.HeardKey;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Spot;
import hingetone.print.HeardBars.Barred;
import hingetone.text.Choice;
import hingetone.theory.Key;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A recording written down, for other programs. */
public final class TranscriptionJson {
  private TranscriptionJson() {}

  /** The whole answer; with its places in the bars of a chart where it has some. */
  public static Map<String, Object> tree(Transcription written, Optional<HeardBars> bars) {
    Key heard = HeardKey.of(written.notes().stream().map(Placed::note).toList());
    List<Map<String, Object>> notes = new ArrayList<>();
    for (int i = 0; i < written.notes().size(); i++) {
      int index = i;
      Optional<Barred> barred = bars.map(b -> b.notes().get(index));
      Key key = barred.map(b -> bars.get().key(b)).orElse(heard);
      Optional<Position> position = barred.map(b -> bars.get().form().position(b.start()));
      notes.add(note(written.notes().get(i), key, position));
    }
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

  private static Map<String, Object> note(Placed placed, Key key, Optional<Position> position) {
    HeardNote note = placed.note();
    return Json.object(
        "at",
        rounded(note.at(), 10_000),
        "end",
        rounded(note.end(), 10_000),
        "note",
        key.spell((int) Math.round(note.reached())).toString(),
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
        position.map(Json::position));
  }

  private static double rounded(double value, double parts) {
    return Math.round(value * parts) / parts;
  }
}

package hingetone.phrase;

import hingetone.text.reading.Field;
import hingetone.text.reading.KeyTable;

/**
 * Every key of the format for phrases: the reader takes what stands here, and the table in {@code
 * src/docs/phrases.md} is this one.
 */
enum PhraseKey implements Field {
  ABOUT("about", Place.FILE, "one line that says what it is", "nothing", "at the gate"),
  FEEL("feel", Place.BOTH, "`straight`, `swung`, or `either`", "either", "swung"),
  METER("meter", Place.BOTH, "its meter", "4/4", "6/8"),
  TEMPO(
      "tempo",
      Place.BOTH,
      "the slowest and the fastest tempo it is meant for, in beats a minute as a chart's `tempo` counts them",
      "20-400",
      "90-150"),
  KEY(
      "key",
      Place.BOTH,
      "the key it is written in: a tonic and `major`, `minor`, `blues` or a mode",
      "must be there",
      "C minor"),
  STATEMENTS("statements", Place.FILE, "the statements, each under its name", "must be there", ""),
  NOTES(
      "notes",
      Place.STATEMENT,
      "its notes, as below",
      "must be there",
      "E4i G4i A4i | C5q. A4i G4h");

  /** Where a key may stand. */
  enum Place {
    FILE("in a file of phrases"),
    STATEMENT("in a statement"),
    BOTH("in a file of phrases or in a statement");

    private final String words;

    Place(String words) {
      this.words = words;
    }
  }

  private final Row row;
  private final Place place;

  PhraseKey(String word, Place place, String meaning, String usual, String example) {
    this.row = new Row(word, meaning, usual, example);
    this.place = place;
  }

  @Override
  public Row row() {
    return row;
  }

  @Override
  public String stands() {
    return place.words;
  }

  /** The keys that may stand in a place. */
  static KeyTable table(Place place) {
    return KeyTable.of(place.words, values(), key -> key.place == place || key.place == Place.BOTH);
  }
}

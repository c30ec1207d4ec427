package hingetone.phrase;

import hingetone.text.reading.Field;
import hingetone.text.reading.KeyTable;
import java.util.List;

/** Every key of the format for phrases: the reader takes what stands here. */
enum PhraseKey implements Field {
  ABOUT("about", Place.FILE, "one line that says what it is", "nothing", "at the gate"),
  FEEL("feel", Place.BOTH, "`straight`, `swung`, or `either`", "either", "swung"),
  METER("meter", Place.BOTH, "its meter", "4/4", "6/8"),
  TEMPO("tempo", Place.BOTH, "the slowest and the fastest tempo", "20-400", "90-150"),
  KEY("key", Place.BOTH, "the key it is written in", "must be there", "C minor"),
  STATEMENTS("statements", Place.FILE, "the statements by name", "must be there", ""),
  NOTES("notes", Place.STATEMENT, "its notes", "must be there", "E4i G4i A4i | C5q. A4i G4h");

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

  private final String word;
  private final Place place;
  private final String meaning;
  private final String usual;
  private final String example;

  PhraseKey(String word, Place place, String meaning, String usual, String example) {
    this.word = word;
    this.place = place;
    this.meaning = meaning;
    this.usual = usual;
    this.example = example;
  }

  @Override
  public String word() {
    return word;
  }

  @Override
  public String stands() {
    return place.words;
  }

  @Override
  public String meaning() {
    return meaning;
  }

  @Override
  public String usual() {
    return usual;
  }

  @Override
  public String example() {
    return example;
  }

  /** The keys that may stand in a place. */
  static KeyTable table(Place place) {
    List<PhraseKey> all = List.of(values());
    return new KeyTable(
        place.words,
        all.stream().filter(key -> key.place == place || key.place == Place.BOTH).toList(),
        all);
  }
}

package hingetone.review.marks;

import hingetone.text.reading.Field;
import hingetone.text.reading.KeyTable;

/**
 * Every key of the format for marks: the reader takes what stands here, and the table in {@code
 * src/docs/marks.md} is this one.
 */
enum MarksKey implements Field {
  REMARK("remark", Place.BOTH, "a remark on the take, or on the phrase", "nothing", "Breathe here"),
  PHRASES("phrases", Place.FILE, "the phrases, a list, all of them", "the program finds them", ""),
  FROM(
      "from",
      Place.PHRASE,
      "where it begins: its first note lies within half a beat",
      "must be there",
      "bar 3 beat 2+1/2"),
  TIME(
      "time",
      Place.PHRASE,
      "which time that bar was played, where a loop or a jump brought it twice",
      "the first after the phrase before",
      "2"),
  ROLE("role", Place.PHRASE, "`statement`, `reply` or `other`", "as the program has it", "reply"),
  TO(
      "to",
      Place.PHRASE,
      "the number of the phrase it answers, counted from 1",
      "the last statement",
      "1");

  /** Where a key may stand. */
  enum Place {
    FILE("in a file of marks"),
    PHRASE("in a phrase"),
    BOTH("in a file of marks or in a phrase");

    private final String words;

    Place(String words) {
      this.words = words;
    }
  }

  private final Row row;
  private final Place place;

  MarksKey(String word, Place place, String meaning, String usual, String example) {
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

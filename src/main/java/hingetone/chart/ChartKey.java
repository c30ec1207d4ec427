package hingetone.chart;

import hingetone.text.reading.Field;
import hingetone.text.reading.KeyTable;

/**
 * Every key of the chart format: the reader takes what stands here, and the table in {@code
 * src/docs/charts.md} is this one.
 */
public enum ChartKey implements Field {
  TITLE("title", Place.CHART, "what the chart is called", "the file's name", "Harbour wall"),
  SECTIONS("sections", Place.CHART, "the sections, each under its name", "must be there", ""),
  FORM("form", Place.CHART, "the sections in playing order", "as they stand", "low high low"),
  COUNT_IN("count-in", Place.CHART, "bars counted before bar 1, 0 to 8", "1", "2"),
  INSTRUMENT("instrument", Place.CHART, "what you play", "guitar", "guitar"),
  TUNING(
      "tuning", Place.CHART, "its open strings from low to high, or a name", "standard", "drop D"),
  CAPO("capo", Place.CHART, "the fret of the capo, 0 to 12", "0", "2"),
  POSITION("position", Place.CHART, "the fret your hand stays around, 1 to 20", "free", "5"),
  FLUENCY("fluency", Place.CHART, "how fast you get: easy, normal or fast", "normal", "easy"),
  SEED("seed", Place.CHART, "the same seed gives the same notes", "1", "7"),
  TEMPO(
      "tempo",
      Place.BOTH,
      "quarter notes a minute (dotted ones in 6/8, 9/8, 12/8), 20 to 400",
      "100",
      "112"),
  METER("meter", Place.BOTH, "the meter", "4/4", "12/8"),
  GROUPING("grouping", Place.BOTH, "how the beats of a bar are grouped", "as usual", "2+2+3"),
  GROOVE("groove", Place.BOTH, "a groove's name, or a path", "a plain one", "gravel-road"),
  BAND("band", Place.BOTH, "how full the band plays: light, normal or full", "normal", "light"),
  SWING("swing", Place.BOTH, "where the off-beat lies, 50% to 75%", "the groove's", "62%"),
  PICKUP("pickup", Place.BOTH, "how many beats early a statement may start", "3/2", "2"),
  KEY("key", Place.SECTION, "the key that sounds", "must be there", "C minor"),
  BARS("bars", Place.SECTION, "the chords, bar by bar", "must be there", "| Cm7 | F7 |"),
  PHRASES("phrases", Place.SECTION, "who speaks when", "the program's", "statement 2, reply 2"),
  LEAVE("leave", Place.SECTION, "the way over to the next key", "either", "run, hold"),
  RIFF("riff", Place.SECTION, "your own bass or chord line", "the groove's", ""),
  RIFF_OF("riff-of", Place.SECTION, "another section's riff, moved to this key", "none", "low"),
  BASS("bass", Place.RIFF, "the bass line as note text", "the groove's", "C3q C3q Eb3q F3q"),
  CHORDS("chords", Place.RIFF, "the chord line as note text", "the groove's", "C4w+Eb4w+G4w");

  /** Where a key may stand. */
  public enum Place {
    CHART("at the top of the chart"),
    SECTION("in a section"),
    BOTH("at the top of the chart or in a section"),
    RIFF("in a riff");

    private final String words;

    Place(String words) {
      this.words = words;
    }

    /** Whether a key with this place may stand in {@code other}. */
    boolean allows(Place other) {
      return this == other || this == BOTH && other != RIFF;
    }

    @Override
    public String toString() {
      return words;
    }
  }

  private final Row row;
  private final Place place;

  ChartKey(String word, Place place, String meaning, String usual, String example) {
    this.row = new Row(word, meaning, usual, example);
    this.place = place;
  }

  @Override
  public Row row() {
    return row;
  }

  public Place place() {
    return place;
  }

  @Override
  public String stands() {
    return place.toString();
  }

  /** The keys that may stand in a place. */
  static KeyTable table(Place place) {
    return KeyTable.of(place.toString(), values(), key -> key.place.allows(place));
  }

  @Override
  public String toString() {
    return word();
  }
}

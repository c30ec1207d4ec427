package hingetone.groove;

import hingetone.text.reading.Field;
import hingetone.text.reading.KeyTable;
import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Every key of the groove format: the reader takes what stands here, and the table in {@code
 * src/docs/grooves.md} is this one.
 */
public enum GrooveKey implements Field {
  ABOUT("about", "one line that says what it is", "nothing", "a small straight groove", "groove"),
  METERS("meter", "the meters it is drawn for, or `any`", "must be there", "5/4, 7/8", "groove"),
  TEMPO("tempo", "slowest and fastest, in beats a minute", "20-400", "90-150", "groove"),
  SWING("swing", "where the off-beat lies, 50% to 75%", "straight", "62%", "groove"),
  KEEP(
      "keep",
      "in how many bars the players keep the section's pattern, 0% to 100%",
      "90%",
      "96%",
      "groove"),
  HUMAN("human", "how far from exact they play", "exact", "", "groove"),
  DRUMS("drums", "the drummer", "must be there", "", "groove"),
  BASS("bass", "the bass player", "must be there", "", "groove"),
  CHORDS("chords", "the player of the chords", "must be there", "", "groove"),
  TIMING("timing", "how far a note may lie from its place, 0 to 40 ms", "0 ms", "6 ms", "human"),
  TOUCH("touch", "how far a velocity may lie from what is drawn, 0 to 40", "0", "6", "human"),
  LATE(
      "late",
      "how far a lane (an instrument, `bass`, `chords`) lies behind the beat, -60 to 60 ms",
      "nothing",
      "{acoustic snare: 4 ms, bass: -2 ms}",
      "human"),
  PROGRAM(
      "program",
      "a General MIDI program",
      "a plucked bass, a clean guitar",
      "drawbar organ",
      "bass chords"),
  LEVEL("level", "how loud, 0 to 127 as MIDI has it", "100", "110", "drums bass chords"),
  PAN(
      "pan",
      "where it stands: 0 left, 64 in the middle, 127 right",
      "64",
      "46",
      "drums bass chords"),
  REVERB("reverb", "how much room it has, 0 to 127", "24", "30", "drums bass chords"),
  CRASH("crash", "what is struck where a section starts", "nothing", "crash cymbal 1", "drums"),
  STOP(
      "stop",
      "how often the band stops after the first beat of the bar before a new key",
      "0%",
      "10%",
      "drums"),
  FILLS("fills", "what is played at the end of a bar", "none", "", "drums"),
  RANGE("range", "lowest and highest note", "E1-G3, C3-C5", "E1-G3", "bass chords"),
  SOUNDING(
      "sounding", "how much of its length a note sounds, 10% to 100%", "90%", "86%", "bass chords"),
  ROOT_ON_CHANGE(
      "root-on-change", "whether each new chord has its root where it starts", "yes", "no", "bass"),
  LEAD_IN(
      "lead-in",
      "where the last note leads into the next chord: changes, sections or never",
      "sections",
      "changes",
      "bass"),
  WITH_KICK(
      "with-kick",
      "how many of the bass drum's strokes the bass strikes with, 0% to 100%",
      "0%",
      "90%",
      "bass"),
  VOICING("voicing", "close, open, shell or power", "open", "shell", "chords"),
  VOICES("voices", "how many notes a chord has, 2 to 5", "4", "3", "chords"),
  TENSIONS("tensions", "whether the key's ninth may be added", "no", "yes", "chords"),
  STRUM("strum", "how long a stroke takes over the strings, 0 to 60 ms", "0 ms", "12 ms", "chords"),
  PATTERNS(
      "patterns",
      "what is played, one of them for a bar",
      "must be there",
      "",
      "drums bass chords"),
  WEIGHT("weight", "how often beside the others, 1 to 100", "1", "3", "pattern fill line"),
  DRAWN_FOR(
      "meter",
      "which of the groove's meters it is drawn for",
      "its one",
      "7/8",
      "pattern fill line"),
  BAND(
      "band",
      "the fullness it is meant for: light, normal or full",
      "any",
      "light",
      "pattern fill line"),
  SIZE("size", "small, medium or big", "medium", "big", "fill"),
  BEATS("beats", "how long it is, in beats", "1", "2", "fill"),
  LANES("lanes", "the instruments and their signs", "must be there", "", "pattern fill"),
  LINE("line", "the signs", "must be there", "1---5-a-", "line");

  /** Where a key may stand. */
  public enum Place {
    GROOVE("at the top"),
    HUMAN("in `human`"),
    DRUMS("in `drums`"),
    BASS("in `bass`"),
    CHORDS("in `chords`"),
    PATTERN("in a pattern of the drums"),
    FILL("in a fill"),
    LINE("in a pattern of bass or chords");

    private final String words;

    Place(String words) {
      this.words = words;
    }

    /** As a message says it. */
    private String told() {
      return words.replace("`", "");
    }

    @Override
    public String toString() {
      return words;
    }
  }

  private final Row row;
  private final Set<Place> places;

  GrooveKey(String word, String meaning, String usual, String example, String places) {
    this.row = new Row(word, meaning, usual, example);
    this.places =
        Arrays.stream(places.split(" "))
            .map(place -> Place.valueOf(place.toUpperCase(Locale.ROOT)))
            .collect(Collectors.toCollection(TreeSet::new));
  }

  @Override
  public Row row() {
    return row;
  }

  /** Where it may stand. */
  public Set<Place> places() {
    return places;
  }

  @Override
  public String stands() {
    return places.stream().map(Place::told).collect(Collectors.joining(" or "));
  }

  /** The keys that may stand in a place. */
  static KeyTable table(Place place) {
    return KeyTable.of(place.told(), values(), key -> key.places.contains(place));
  }
}

package hingetone.groove;

import hingetone.groove.GrooveValues.Range;
import hingetone.score.GeneralMidi;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.WholeText;
import hingetone.text.reading.Yaml;
import hingetone.time.Meter;
import hingetone.time.TempoRange;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads grooves. The format is specified in {@code src/docs/grooves.md}. */
public final class GrooveReader {
  private static final int USUAL_BASS_PROGRAM = 33;
  private static final int USUAL_CHORD_PROGRAM = 27;
  private static final Range USUAL_BASS_RANGE = new Range(28, 55);
  private static final Range USUAL_CHORD_RANGE = new Range(48, 72);
  private static final int MOST_MILLIS_LATE = 60;

  private final Problems problems;
  private final String name;

  private GrooveReader(Problems problems, String name) {
    this.problems = problems;
    this.name = name;
  }

  /** Whether a document looks like a groove rather than a chart. */
  public static boolean isGroove(Yaml document) {
    return document instanceof Yaml.Mapping mapping
        && mapping.entry("sections").isEmpty()
        && Stream.of("drums", "bass", "chords").anyMatch(k -> mapping.entry(k).isPresent());
  }

  /** Reads a groove under a name: the groove, or every problem in it. Never throws. */
  public static Reading<Groove> read(Source source, String name) {
    Problems problems = new Problems(source);
    Optional<Groove> groove = Yaml.read(problems).flatMap(new GrooveReader(problems, name)::groove);
    return problems.reading(groove::orElseThrow);
  }

  private Optional<Groove> groove(Yaml yaml) {
    if (!(yaml instanceof Yaml.Mapping mapping)) {
      problems.add(
          yaml.span(),
          "this is no groove",
          "I expected keys with values: "
              + String.join(", ", GrooveKey.table(GrooveKey.Place.GROOVE).words())
              + ".");
      return Optional.empty();
    }
    GrooveFields fields = GrooveFields.of(problems, mapping);
    Stream.of(GrooveKey.METERS, GrooveKey.DRUMS, GrooveKey.BASS, GrooveKey.CHORDS)
        .forEach(fields::require);
    Optional<List<Meter>> meters =
        fields.read(GrooveKey.METERS, GrooveValues::meters, "meters such as 4/4, or any");
    Optional<String> about =
        fields.read(GrooveKey.ABOUT, Optional::of, "a line that says what it is");
    Optional<TempoRange> tempo =
        fields.read(GrooveKey.TEMPO, TempoRange::parse, "the slowest and the fastest tempo");
    Optional<Feel> feel =
        fields.read(
            GrooveKey.SWING,
            GrooveValues::feel,
            "where the off-beat lies, 50% to 75% of its pair of eighths or, with \"sixteenths\""
                + " behind it, sixteenths");
    int keep = fields.whole(GrooveKey.KEEP, 0, 100, Groove.USUAL_KEEP, "%");
    PatternReader patterns = new PatternReader(problems, meters);
    Optional<DrumStyle> drums =
        fields.part(GrooveKey.DRUMS, GrooveKey.Place.DRUMS).map(f -> drums(f, patterns));
    Optional<BassStyle> bass =
        fields.part(GrooveKey.BASS, GrooveKey.Place.BASS).map(f -> bass(f, patterns));
    Optional<ChordStyle> chords =
        fields.part(GrooveKey.CHORDS, GrooveKey.Place.CHORDS).map(f -> chords(f, patterns));
    Optional<Human> human = fields.part(GrooveKey.HUMAN, GrooveKey.Place.HUMAN).map(this::human);
    if (!problems.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Groove(
            name,
            about.orElse(""),
            meters.orElseThrow(),
            tempo.orElse(TempoRange.ANY).slowest(),
            tempo.orElse(TempoRange.ANY).fastest(),
            feel.orElse(Feel.STRAIGHT),
            keep,
            drums.orElseThrow(),
            bass.orElseThrow(),
            chords.orElseThrow(),
            human.orElse(Human.EXACT)));
  }

  private Human human(GrooveFields fields) {
    Map<Human.Lane, Integer> late = new HashMap<>();
    String expected = "I expected lanes and milliseconds, as in acoustic snare: 4 ms.";
    for (Yaml.Entry entry : fields.entries(GrooveKey.LATE, expected)) {
      Optional<Integer> millis =
          entry.value() instanceof Yaml.Text text
              ? WholeText.read(text.value().strip(), "ms", -MOST_MILLIS_LATE, MOST_MILLIS_LATE)
              : Optional.empty();
      Optional<Human.Lane> lane = lane(entry.key());
      if (millis.isEmpty()) {
        problems.add(
            entry.value() instanceof Yaml.Text text && text.isEmpty()
                ? entry.key().span()
                : entry.value().span(),
            "no time from -60 to 60 ms",
            expected);
      } else {
        lane.ifPresent(key -> late.put(key, millis.get()));
      }
    }
    return new Human(
        fields.whole(GrooveKey.TIMING, 0, 40, 0, "ms"),
        fields.whole(GrooveKey.TOUCH, 0, 40, 0, ""),
        late);
  }

  private Optional<Human.Lane> lane(Yaml.Text lane) {
    return switch (lane.value()) {
      case "bass" -> Optional.of(Human.Lane.of(Role.BASS, 0));
      case "chords" -> Optional.of(Human.Lane.of(Role.CHORDS, 0));
      default ->
          PatternReader.percussion(problems, lane).map(key -> Human.Lane.of(Role.DRUMS, key));
    };
  }

  private DrumStyle drums(GrooveFields fields, PatternReader patterns) {
    Optional<Integer> crash =
        fields
            .text(GrooveKey.CRASH, PatternReader.PERCUSSION_EXPECTED)
            .flatMap(text -> PatternReader.percussion(problems, text));
    return new DrumStyle(
        sound(fields, 0),
        patterns.drumPatterns(fields),
        patterns.fills(fields),
        crash,
        fields.whole(GrooveKey.STOP, 0, 100, 0, "%"));
  }

  private BassStyle bass(GrooveFields fields, PatternReader patterns) {
    Range range = range(fields).orElse(USUAL_BASS_RANGE);
    return new BassStyle(
        sound(fields, program(fields).orElse(USUAL_BASS_PROGRAM)),
        range.low(),
        range.high(),
        fields.whole(GrooveKey.SOUNDING, 10, 100, 90, "%"),
        fields.yes(GrooveKey.ROOT_ON_CHANGE, true),
        fields
            .choice(GrooveKey.LEAD_IN, BassStyle.LeadIn.values())
            .orElse(BassStyle.LeadIn.SECTIONS),
        fields.whole(GrooveKey.WITH_KICK, 0, 100, 0, "%"),
        patterns.lines(fields, BassStyle.SIGNS));
  }

  private ChordStyle chords(GrooveFields fields, PatternReader patterns) {
    Range range = range(fields).orElse(USUAL_CHORD_RANGE);
    return new ChordStyle(
        sound(fields, program(fields).orElse(USUAL_CHORD_PROGRAM)),
        range.low(),
        range.high(),
        fields
            .choice(GrooveKey.VOICING, ChordStyle.Voicing.values())
            .orElse(ChordStyle.Voicing.OPEN),
        fields.whole(GrooveKey.VOICES, 2, 5, 4, ""),
        fields.yes(GrooveKey.TENSIONS, false),
        fields.whole(GrooveKey.SOUNDING, 10, 100, 90, "%"),
        fields.whole(GrooveKey.STRUM, 0, 60, 0, "ms"),
        patterns.lines(fields, ChordStyle.SIGNS));
  }

  private static Optional<Integer> program(GrooveFields fields) {
    return fields.read(
        GrooveKey.PROGRAM,
        GeneralMidi::program,
        "the name of a General MIDI program",
        GeneralMidi.PROGRAMS);
  }

  private static Optional<Range> range(GrooveFields fields) {
    return fields.read(
        GrooveKey.RANGE,
        GrooveValues::keys,
        "the lowest and the highest note, an octave apart or more");
  }

  private static Sound sound(GrooveFields fields, int program) {
    return new Sound(
        program,
        fields.whole(GrooveKey.LEVEL, 0, 127, 100, ""),
        fields.whole(GrooveKey.PAN, 0, 127, 64, ""),
        fields.whole(GrooveKey.REVERB, 0, 127, 24, ""));
  }
}

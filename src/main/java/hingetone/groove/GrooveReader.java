package hingetone.groove;

import hingetone.score.GeneralMidi;
import hingetone.score.Sound;
import hingetone.text.Problems;
import hingetone.text.Reading;
import hingetone.text.Source;
import hingetone.text.Yaml;
import hingetone.text.YamlFields;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** Reads grooves. The format is specified in {@code src/docs/grooves.md}. */
public final class GrooveReader {
  private static final String HELP = "The page on grooves says what it needs: src/docs/grooves.md.";
  private static final List<String> KEYS =
      List.of("about", "meter", "tempo", "swing", "human", "drums", "bass", "chords");
  private static final List<String> HUMAN_KEYS = List.of("timing", "touch", "late");
  private static final List<String> DRUM_KEYS =
      List.of("level", "pan", "reverb", "crash", "stop", "patterns", "fills");
  private static final List<String> BASS_KEYS =
      List.of(
          "program",
          "level",
          "pan",
          "reverb",
          "range",
          "sounding",
          "root-on-change",
          "lead-in",
          "patterns");
  private static final List<String> CHORD_KEYS =
      List.of(
          "program",
          "level",
          "pan",
          "reverb",
          "range",
          "voicing",
          "voices",
          "tensions",
          "sounding",
          "strum",
          "patterns");
  private static final int USUAL_BASS_PROGRAM = 33;
  private static final int USUAL_CHORD_PROGRAM = 27;

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
      problems.add(yaml.span(), "this is no groove", "I expected drums, bass and chords: ...");
      return Optional.empty();
    }
    YamlFields fields = new YamlFields(problems, mapping, "in a groove", KEYS, HELP);
    String about =
        fields.read("about", Optional::of, "", "I expected a line that says what it is.");
    Optional<List<Meter>> meters = meters(fields);
    int[] tempo =
        fields.read(
            "tempo",
            GrooveReader::range,
            new int[] {Tempo.SLOWEST, Tempo.FASTEST},
            "I expected the slowest and the fastest tempo, as in tempo: 90-150.");
    Feel feel =
        fields.read(
            "swing",
            GrooveReader::feel,
            Feel.STRAIGHT,
            "I expected where the off-beat lies, 50% to 75%, as in swing: 62% or swing: 58%"
                + " sixteenths.");
    PatternReader patterns = new PatternReader(problems, meters);
    Optional<DrumStyle> drums = fields.required("drums", DRUM_KEYS).map(f -> drums(f, patterns));
    Optional<BassStyle> bass = fields.required("bass", BASS_KEYS).map(f -> bass(f, patterns));
    Optional<ChordStyle> chords =
        fields.required("chords", CHORD_KEYS).map(f -> chords(f, patterns));
    Human human = fields.part("human", HUMAN_KEYS).map(this::human).orElse(Human.EXACT);
    if (!problems.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Groove(
            name,
            about,
            meters.orElseThrow(),
            tempo[0],
            tempo[1],
            feel,
            drums.orElseThrow(),
            bass.orElseThrow(),
            chords.orElseThrow(),
            human));
  }

  /** The groove's meters, none where it fits any; empty where they cannot be read. */
  private static Optional<List<Meter>> meters(YamlFields fields) {
    if (!fields.has("meter")) {
      fields.missing("meter");
    }
    return fields.read(
        "meter",
        text -> {
          if (text.equals("any")) {
            return Optional.of(Optional.of(List.of()));
          }
          List<Optional<Meter>> read =
              Arrays.stream(text.split("[,\\s]+")).map(Meter::parse).toList();
          return read.stream().allMatch(Optional::isPresent)
              ? Optional.of(Optional.of(read.stream().map(Optional::get).toList()))
              : Optional.empty();
        },
        Optional.<List<Meter>>empty(),
        "I expected meters, as in meter: 4/4 or meter: 5/4, 7/8, or any.");
  }

  private static Optional<int[]> range(String text) {
    String[] ends = text.split("\\s*[-–]\\s*", -1);
    if (ends.length != 2 || !Stream.of(ends).allMatch(e -> e.matches("[0-9]{2,3}"))) {
      return Optional.empty();
    }
    int low = Integer.parseInt(ends[0]);
    int high = Integer.parseInt(ends[1]);
    boolean possible = low >= Tempo.SLOWEST && low <= high && high <= Tempo.FASTEST;
    return possible ? Optional.of(new int[] {low, high}) : Optional.empty();
  }

  private static Optional<Feel> feel(String text) {
    boolean sixteenths = text.endsWith(" sixteenths");
    String percent = text.replaceFirst("\\s+sixteenths$", "");
    return YamlFields.wholeNumber(percent, "%")
        .filter(p -> p >= Feel.STRAIGHT_PERCENT && p <= Feel.MOST_PERCENT)
        .map(p -> new Feel(p, sixteenths ? Beats.of(1, 2) : Beats.ONE));
  }

  private Human human(YamlFields fields) {
    Map<Integer, Integer> late = new HashMap<>();
    String expected = "I expected lanes and milliseconds, as in acoustic snare: 8 ms.";
    for (Yaml.Entry entry : fields.entries("late", expected)) {
      Optional<Integer> millis =
          entry.value() instanceof Yaml.Text text
              ? YamlFields.wholeNumber(text.value().strip(), "ms").filter(m -> Math.abs(m) <= 60)
              : Optional.empty();
      if (millis.isEmpty()) {
        problems.add(entry.value().span(), "no time from -60 to 60 ms", expected);
      } else {
        lane(entry.key()).ifPresent(key -> late.put(key, millis.get()));
      }
    }
    return new Human(
        fields.whole("timing", 0, 40, 0, " ms"), fields.whole("touch", 0, 40, 0, ""), late);
  }

  private Optional<Integer> lane(Yaml.Text lane) {
    return switch (lane.value()) {
      case "bass" -> Optional.of(Human.BASS);
      case "chords" -> Optional.of(Human.CHORDS);
      default -> PatternReader.percussion(problems, lane);
    };
  }

  private DrumStyle drums(YamlFields fields, PatternReader patterns) {
    Optional<Integer> crash =
        fields.text("crash").flatMap(text -> PatternReader.percussion(problems, text));
    return new DrumStyle(
        sound(fields, 0),
        patterns.drumPatterns(fields),
        patterns.fills(fields),
        crash,
        fields.whole("stop", 0, 100, 0, "%"));
  }

  private BassStyle bass(YamlFields fields, PatternReader patterns) {
    int[] range = keys(fields, "E1-G3");
    return new BassStyle(
        sound(fields, USUAL_BASS_PROGRAM),
        range[0],
        range[1],
        fields.whole("sounding", 10, 100, 90, "%"),
        fields.read("root-on-change", GrooveReader::yesOrNo, true, "I expected yes or no."),
        choice(fields, "lead-in", BassStyle.LeadIn.values(), BassStyle.LeadIn.SECTIONS),
        patterns.lines(fields, BassStyle.SIGNS));
  }

  private ChordStyle chords(YamlFields fields, PatternReader patterns) {
    int[] range = keys(fields, "C3-C5");
    return new ChordStyle(
        sound(fields, USUAL_CHORD_PROGRAM),
        range[0],
        range[1],
        choice(fields, "voicing", ChordStyle.Voicing.values(), ChordStyle.Voicing.OPEN),
        fields.whole("voices", 2, 5, 4, ""),
        fields.read("tensions", GrooveReader::yesOrNo, false, "I expected yes or no."),
        fields.whole("sounding", 10, 100, 90, "%"),
        fields.whole("strum", 0, 60, 0, " ms"),
        patterns.lines(fields, ChordStyle.SIGNS));
  }

  private Sound sound(YamlFields fields, int usualProgram) {
    int program =
        fields.read(
            "program",
            GeneralMidi::program,
            usualProgram,
            "I expected the name of a General MIDI program, as in program: Electric Bass (finger).",
            GeneralMidi.PROGRAMS);
    return new Sound(
        program,
        fields.whole("level", 0, 127, 100, ""),
        fields.whole("pan", 0, 127, 64, ""),
        fields.whole("reverb", 0, 127, 24, ""));
  }

  private static int[] keys(YamlFields fields, String usual) {
    Function<String, Optional<int[]>> read =
        text -> {
          List<Optional<Pitch>> ends =
              Arrays.stream(text.split("\\s*[-–]\\s*")).map(Pitch::parse).toList();
          boolean two = ends.size() == 2 && ends.stream().allMatch(Optional::isPresent);
          if (!two) {
            return Optional.empty();
          }
          int low = ends.get(0).get().midi();
          int high = ends.get(1).get().midi();
          return low >= 0 && high <= 127 && high - low >= 12
              ? Optional.of(new int[] {low, high})
              : Optional.empty();
        };
    return fields.read(
        "range",
        read,
        read.apply(usual).orElseThrow(),
        "I expected the lowest and the highest note, an octave apart or more, as in range: "
            + usual
            + ".");
  }

  private static Optional<Boolean> yesOrNo(String text) {
    return switch (text) {
      case "yes" -> Optional.of(true);
      case "no" -> Optional.of(false);
      default -> Optional.empty();
    };
  }

  private static <E extends Enum<E>> E choice(YamlFields fields, String key, E[] choices, E usual) {
    List<String> words =
        Arrays.stream(choices).map(c -> c.name().toLowerCase(Locale.ROOT)).toList();
    return fields.read(
        key,
        text -> Optional.of(words.indexOf(text)).filter(i -> i >= 0).map(i -> choices[i]),
        usual,
        "I expected one of: " + String.join(", ", words) + ".",
        words);
  }
}

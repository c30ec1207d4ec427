package hingetone.theory;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A kind of scale: its name, aliases and intervals from the tonic, ascending.
 *
 * <pre>{@code
 * ScaleType.parse("Super Locrian").orElseThrow().name();   // altered
 * ScaleType.named("blues").intervals();                    // 1 b3 4 b5 5 b7
 * }</pre>
 *
 * @param name the name shown to people, lower case
 * @param aliases other names that are read
 * @param intervals from the tonic, unison first, ascending, all within an octave
 */
public record ScaleType(String name, List<String> aliases, List<Interval> intervals) {
  /**
   * Name, degrees, aliases; the everyday kinds first, then by family. Common practice; checked
   * against the scale table of the npm package tonal 6.4.3 (MIT).
   */
  private static final String TABLE =
      """
      major                        | 1 2 3 4 5 6 7         | ionian
      minor                        | 1 2 b3 4 5 b6 b7      | natural minor, aeolian
      minor pentatonic             | 1 b3 4 5 b7           | pentatonic minor
      major pentatonic             | 1 2 3 5 6             | pentatonic, pentatonic major
      blues                        | 1 b3 4 b5 5 b7        | minor blues
      major blues                  | 1 2 b3 3 5 6          |
      dorian                       | 1 2 b3 4 5 6 b7       |
      phrygian                     | 1 b2 b3 4 5 b6 b7     |
      lydian                       | 1 2 3 #4 5 6 7        |
      mixolydian                   | 1 2 3 4 5 6 b7        | dominant
      locrian                      | 1 b2 b3 4 b5 b6 b7    |
      harmonic minor               | 1 2 b3 4 5 b6 7       |
      locrian #6                   | 1 b2 b3 4 b5 6 b7     | locrian 6, locrian natural 6, locrian sharp 6
      major augmented              | 1 2 3 4 #5 6 7        | ionian #5, ionian augmented, major #5
      dorian #4                    | 1 2 b3 #4 5 6 b7      | romanian minor, ukrainian dorian, altered dorian
      phrygian dominant            | 1 b2 3 4 5 b6 b7      | phrygian major, spanish
      lydian #2                    | 1 #2 3 #4 5 6 7       | lydian #9
      ultralocrian                 | 1 b2 b3 b4 b5 b6 bb7  | altered diminished, superlocrian bb7
      melodic minor                | 1 2 b3 4 5 6 7        | jazz minor
      dorian b2                    | 1 b2 b3 4 5 6 b7      | phrygian #6, melodic minor second mode
      lydian augmented             | 1 2 3 #4 #5 6 7       |
      lydian dominant              | 1 2 3 #4 5 6 b7       | lydian b7, overtone
      mixolydian b6                | 1 2 3 4 5 b6 b7       | melodic minor fifth mode
      locrian #2                   | 1 2 b3 4 b5 b6 b7     | half-diminished, aeolian b5
      altered                      | 1 b2 #2 3 #4 b6 b7    | super locrian, diminished whole tone
      whole tone                   | 1 2 3 #4 #5 #6        |
      diminished                   | 1 2 b3 4 b5 b6 6 7    | whole-half diminished
      half-whole diminished        | 1 b2 b3 3 #4 5 6 b7   | dominant diminished
      augmented                    | 1 #2 3 5 #5 7         |
      six tone symmetric           | 1 b2 3 4 #5 6         |
      bebop                        | 1 2 3 4 5 6 b7 7      | bebop dominant
      bebop major                  | 1 2 3 4 5 #5 6 7      |
      bebop minor                  | 1 2 b3 3 4 5 6 b7     | bebop dorian
      bebop locrian                | 1 b2 b3 4 b5 5 b6 b7  |
      minor bebop                  | 1 2 b3 4 5 b6 b7 7    | bebop natural minor
      minor six diminished         | 1 2 b3 4 5 b6 6 7     | bebop melodic minor
      composite blues              | 1 2 b3 3 4 b5 5 6 b7  |
      harmonic major               | 1 2 3 4 5 b6 7        |
      lydian diminished            | 1 2 b3 #4 5 6 7       |
      double harmonic major        | 1 b2 3 4 5 b6 7       | double harmonic, byzantine
      double harmonic lydian       | 1 b2 3 #4 5 b6 7      |
      hungarian minor              | 1 2 b3 #4 5 b6 7      |
      hungarian major              | 1 #2 3 #4 5 6 b7      |
      neapolitan major             | 1 b2 b3 4 5 6 7       |
      neapolitan minor             | 1 b2 b3 4 5 b6 7      | balinese
      lydian minor                 | 1 2 3 #4 5 b6 b7      |
      leading whole tone           | 1 2 3 #4 #5 b7 7      |
      locrian major                | 1 2 3 4 b5 b6 b7      | major locrian
      spanish heptatonic           | 1 b2 b3 3 4 5 b6 b7   | spanish eight-tone
      flamenco                     | 1 b2 b3 3 #4 5 b7     |
      persian                      | 1 b2 3 4 b5 b6 7      |
      enigmatic                    | 1 b2 3 b5 b6 b7 7     |
      prometheus                   | 1 2 3 #4 6 b7         |
      prometheus neapolitan        | 1 b2 3 #4 6 b7        |
      minor hexatonic              | 1 2 b3 4 5 7          |
      minor six pentatonic         | 1 b3 4 5 6            |
      flat three pentatonic        | 1 2 b3 5 6            | kumoi
      flat six pentatonic          | 1 2 3 5 b6            |
      ionian pentatonic            | 1 3 4 5 7             |
      mixolydian pentatonic        | 1 3 4 5 b7            | dominant pentatonic
      lydian pentatonic            | 1 3 #4 5 7            |
      lydian dominant pentatonic   | 1 3 #4 5 b7           |
      lydian #5p pentatonic        | 1 3 #4 #5 7           | lydian augmented pentatonic
      locrian pentatonic           | 1 b3 4 b5 b7          | minor seven flat five pentatonic
      super locrian pentatonic     | 1 b3 b4 b5 b7         |
      whole tone pentatonic        | 1 3 b5 b6 b7          |
      minor #7m pentatonic         | 1 b3 4 5 7            | minor major seventh pentatonic
      neapolitan major pentatonic  | 1 3 4 b5 b7           |
      suspended pentatonic         | 1 2 4 5 b7            | egyptian
      ritusen                      | 1 2 4 5 6             |
      hirajoshi                    | 1 2 b3 5 b6           |
      iwato                        | 1 b2 4 b5 b7          |
      in-sen                       | 1 b2 4 5 b7           |
      kumoijoshi                   | 1 b2 4 5 b6           |
      pelog                        | 1 b2 b3 5 b6          |
      chromatic                    | 1 b2 2 b3 3 4 b5 5 b6 6 b7 7 |
      """;

  /** Every known kind, the everyday ones first. */
  public static final List<ScaleType> ALL = TABLE.lines().map(ScaleType::ofLine).toList();

  private static final Map<String, ScaleType> BY_NAME = byName();

  public ScaleType {
    aliases = List.copyOf(aliases);
    intervals = List.copyOf(intervals);
  }

  private static ScaleType ofLine(String line) {
    TableRow row = TableRow.of(line, ", *");
    return new ScaleType(row.name(), row.aliases(), row.intervals());
  }

  private static Map<String, ScaleType> byName() {
    Map<String, ScaleType> names = new HashMap<>();
    for (ScaleType type : ALL) {
      Stream.concat(Stream.of(type.name), type.aliases.stream()).forEach(n -> names.put(n, type));
    }
    return Map.copyOf(names);
  }

  /** Finds a kind by name or alias, whatever its case and spacing; empty when unknown. */
  public static Optional<ScaleType> parse(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT).replace('♯', '#').replace('♭', 'b');
    return Optional.ofNullable(BY_NAME.get(wanted.replaceAll("\\s+", " ")));
  }

  /** The kind with a name that is known to exist. */
  public static ScaleType named(String name) {
    ScaleType known = BY_NAME.get(name);
    return known != null
        ? known
        : parse(name).orElseThrow(() -> new IllegalArgumentException("no scale " + name));
  }

  @Override
  public String toString() {
    return name;
  }
}

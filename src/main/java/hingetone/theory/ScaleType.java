package hingetone.theory;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A kind of scale: its name, aliases and intervals from the tonic, ascending.
 *
 * <p>Names and degrees are those in common use; the table is checked against the npm package tonal
 * 6.4.3 (MIT).
 *
 * @param name the name shown to people, lower case
 * @param aliases other names that are read
 * @param intervals from the tonic, unison first, ascending, all within an octave
 */
public record ScaleType(String name, List<String> aliases, List<Interval> intervals) {
  /** Every known kind, the everyday ones first. */
  public static final List<ScaleType> ALL =
      List.of(
          of("major", "1 2 3 4 5 6 7", "ionian"),
          of("minor", "1 2 b3 4 5 b6 b7", "natural minor", "aeolian"),
          of("minor pentatonic", "1 b3 4 5 b7"),
          of("major pentatonic", "1 2 3 5 6"),
          of("blues", "1 b3 4 b5 5 b7", "minor blues"),
          of("major blues", "1 2 b3 3 5 6"),
          of("dorian", "1 2 b3 4 5 6 b7"),
          of("phrygian", "1 b2 b3 4 5 b6 b7"),
          of("lydian", "1 2 3 #4 5 6 7"),
          of("mixolydian", "1 2 3 4 5 6 b7"),
          of("locrian", "1 b2 b3 4 b5 b6 b7"),
          of("harmonic minor", "1 2 b3 4 5 b6 7"),
          of("melodic minor", "1 2 b3 4 5 6 7"),
          of("phrygian dominant", "1 b2 3 4 5 b6 b7"),
          of("altered", "1 b2 #2 3 #4 b6 b7"),
          of("whole tone", "1 2 3 #4 #5 #6"),
          of("diminished", "1 2 b3 4 b5 b6 6 7", "whole-half diminished"),
          of("half-whole diminished", "1 b2 b3 3 #4 5 6 b7", "dominant diminished"));

  public ScaleType {
    aliases = List.copyOf(aliases);
    intervals = List.copyOf(intervals);
  }

  private static ScaleType of(String name, String degrees, String... aliases) {
    List<Interval> intervals =
        Arrays.stream(degrees.split(" ")).map(d -> Interval.parse(d).orElseThrow()).toList();
    return new ScaleType(name, List.of(aliases), intervals);
  }

  /** Finds a kind by name or alias, whatever its case; empty when unknown. */
  public static Optional<ScaleType> parse(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    return ALL.stream()
        .filter(type -> type.name.equals(wanted) || type.aliases.contains(wanted))
        .findFirst();
  }

  /** The kind with a name that is known to exist. */
  public static ScaleType named(String name) {
    return parse(name).orElseThrow(() -> new IllegalArgumentException("no scale " + name));
  }

  @Override
  public String toString() {
    return name;
  }
}

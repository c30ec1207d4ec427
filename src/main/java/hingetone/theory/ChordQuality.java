package hingetone.theory;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A kind of chord: the suffix players write after the root, its aliases and its intervals.
 *
 * @param suffix the preferred suffix: {@code m7}, {@code 7#9}, empty for a major triad
 * @param aliases other suffixes that are read
 * @param intervals from the root, unison first, tensions above the octave as 9, 11, 13
 */
public record ChordQuality(String suffix, List<String> aliases, List<Interval> intervals) {
  /** Every known kind. */
  public static final List<ChordQuality> ALL =
      List.of(
          of("", "1 3 5", "maj", "M"),
          of("m", "1 b3 5", "min", "mi", "-"),
          of("5", "1 5"),
          of("7", "1 3 5 b7", "dom"),
          of("m7", "1 b3 5 b7", "min7", "mi7", "-7"),
          of("maj7", "1 3 5 7", "M7", "Δ", "ma7", "Maj7"),
          of("6", "1 3 5 6"),
          of("m6", "1 b3 5 6", "-6", "min6"),
          of("sus4", "1 4 5", "sus"),
          of("sus2", "1 2 5"),
          of("7sus4", "1 4 5 b7", "7sus"),
          of("9", "1 3 5 b7 9"),
          of("m9", "1 b3 5 b7 9", "min9", "-9"),
          of("maj9", "1 3 5 7 9", "M9", "Δ9"),
          of("add9", "1 3 5 9"),
          of("7#9", "1 3 5 b7 #9"),
          of("7b9", "1 3 5 b7 b9"),
          of("13", "1 3 5 b7 9 13"),
          of("dim", "1 b3 b5", "°", "o"),
          of("dim7", "1 b3 b5 bb7", "°7", "o7"),
          of("m7b5", "1 b3 b5 b7", "ø", "-7b5", "min7b5"),
          of("aug", "1 3 #5", "+"));

  public ChordQuality {
    aliases = List.copyOf(aliases);
    intervals = List.copyOf(intervals);
  }

  private static ChordQuality of(String suffix, String degrees, String... aliases) {
    List<Interval> intervals =
        Arrays.stream(degrees.split(" ")).map(d -> Interval.parse(d).orElseThrow()).toList();
    return new ChordQuality(suffix, List.of(aliases), intervals);
  }

  /** Finds a kind by suffix or alias, case kept ({@code m} and {@code M} differ). */
  public static Optional<ChordQuality> parse(String suffix) {
    String wanted = suffix.replace('♯', '#').replace('♭', 'b');
    return ALL.stream()
        .filter(quality -> quality.suffix.equals(wanted) || quality.aliases.contains(wanted))
        .findFirst();
  }

  /** Whether the chord has a note this many semitones (0 to 11) above its root. */
  public boolean has(int semitones) {
    return intervals.stream().anyMatch(i -> Math.floorMod(i.semitones(), 12) == semitones);
  }

  @Override
  public String toString() {
    return suffix;
  }
}

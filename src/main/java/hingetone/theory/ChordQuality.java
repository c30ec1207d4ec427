package hingetone.theory;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A kind of chord: the suffix players write after the root, its aliases and its intervals.
 *
 * <p>{@link #ALL} names the everyday kinds, one line each. Reading knows more: any of them with
 * further {@linkplain Alteration alterations}, in any order, with or without parentheses.
 *
 * <pre>{@code
 * ChordQuality.parse("min7").orElseThrow().suffix();           // m7
 * ChordQuality.parse("7(#11,b9)").orElseThrow().suffix();      // 7b9#11
 * ChordQuality.parse("13b5#9").orElseThrow().intervals();      // 1 3 b5 b7 #9 13
 * }</pre>
 *
 * @param suffix the preferred suffix: {@code m7}, {@code 7#9}, empty for a major triad
 * @param aliases other suffixes that are read, beside those that {@link ChordSpelling} derives
 * @param intervals from the root, unison first, by size, tensions above the octave as 9, 11, 13
 */
public record ChordQuality(String suffix, List<String> aliases, List<Interval> intervals) {
  /**
   * Suffix, degrees, aliases; the everyday kinds first. Common practice; checked against the chord
   * table of the npm package tonal 6.4.3 (MIT). A row may differ from what its alterations say:
   * {@code 7b13}, {@code 9b13} and {@code maj7b6} put the sixth in the fifth's place, and the sharp
   * fifth of {@code m7#5} is spelled as the flat sixth it is (A C F G, an F chord over its third).
   */
  private static final String TABLE =
      """
              | 1 3 5               | maj
      m       | 1 b3 5              |
      7       | 1 3 5 b7            | dom dom7
      maj7    | 1 3 5 7             | Δ ^ 7M
      m7      | 1 b3 5 b7           |
      5       | 1 5                 |
      6       | 1 3 5 6             | maj6
      m6      | 1 b3 5 6            |
      9       | 1 3 5 b7 9          |
      m9      | 1 b3 5 b7 9         |
      maj9    | 1 3 5 7 9           |
      sus4    | 1 4 5               | sus
      sus2    | 1 2 5               |
      7sus4   | 1 4 5 b7            |
      add9    | 1 3 5 9             | 2
      madd9   | 1 b3 5 9            | m2
      6/9     | 1 3 5 6 9           | 69 maj69 maj6/9
      m6/9    | 1 b3 5 6 9          | m69
      dim     | 1 b3 b5             |
      dim7    | 1 b3 b5 bb7         |
      m7b5    | 1 b3 b5 b7          | ø ø7
      aug     | 1 3 #5              | aug5
      mMaj7   | 1 b3 5 7            | mΔ m^
      7b9     | 1 3 5 b7 b9         |
      7#9     | 1 3 5 b7 #9         |
      7b5     | 1 3 b5 b7           |
      7#5     | 1 3 #5 b7           | aug7
      7#11    | 1 3 5 b7 #11        |
      7b13    | 1 3 b7 b13          |
      7alt    | 1 3 #5 b7 #9        | alt alt7
      13      | 1 3 5 b7 9 13       |
      m13     | 1 b3 5 b7 9 13      |
      maj13   | 1 3 5 7 9 13        |
      11      | 1 5 b7 9 11         |
      11sus4  | 1 5 b7 9 11         |
      m11     | 1 b3 5 b7 9 11      |
      maj11   | 1 5 7 9 11          |
      9sus4   | 1 4 5 b7 9          |
      13sus4  | 1 4 5 b7 9 13       |
      7sus4b9 | 1 4 5 b7 b9         |
      7#5#9   | 1 3 #5 b7 #9        | aug7#9
      7#5b9   | 1 3 #5 b7 b9        | aug7b9
      7b5b9   | 1 3 b5 b7 b9        |
      7b5#9   | 1 3 b5 b7 #9        |
      7b9#9   | 1 3 5 b7 b9 #9      |
      7b9#11  | 1 3 5 b7 b9 #11     |
      7#9#11  | 1 3 5 b7 #9 #11     |
      7b9b13  | 1 3 5 b7 b9 b13     |
      7#9b13  | 1 3 5 b7 #9 b13     |
      7#11b13 | 1 3 5 b7 #11 b13    |
      9b5     | 1 3 b5 b7 9         |
      9#5     | 1 3 #5 b7 9         | aug9
      9#11    | 1 3 5 b7 9 #11      |
      9b13    | 1 3 b7 9 b13        |
      13b9    | 1 3 5 b7 b9 13      |
      13#9    | 1 3 5 b7 #9 13      |
      13#11   | 1 3 5 b7 9 #11 13   |
      maj7b5  | 1 3 b5 7            |
      maj7#5  | 1 3 #5 7            | augMaj7
      maj7#11 | 1 3 5 7 #11         |
      maj7b6  | 1 3 b6 7            |
      maj9#5  | 1 3 #5 7 9          |
      maj9#11 | 1 3 5 7 9 #11       |
      maj13#11| 1 3 5 7 9 #11 13    |
      m7#5    | 1 b3 b6 b7          |
      m9#5    | 1 b3 b6 b7 9        |
      m9b5    | 1 b3 b5 b7 9        | ø9
      m11b5   | 1 b3 b5 b7 9 11     | ø11
      mb6     | 1 b3 5 b6           |
      mb6b9   | 1 b3 b6 b9          |
      mMaj9   | 1 b3 5 7 9          |
      mMaj11  | 1 b3 5 7 9 11       |
      mMaj13  | 1 b3 5 7 9 13       |
      dimMaj7 | 1 b3 b5 7           |
      dim7Maj7| 1 b3 b5 6 7         |
      7add13  | 1 3 5 b7 13         | 67
      m7add11 | 1 b3 5 b7 11        |
      augadd9 | 1 3 #5 9            |
      5add9   | 1 5 9               |
      sus24   | 1 2 4 5             | sus42
      maj7sus4| 1 4 5 7             |
      """;

  /** Every kind with a line of its own. */
  public static final List<ChordQuality> ALL = TABLE.lines().map(ChordQuality::ofLine).toList();

  public ChordQuality {
    aliases = List.copyOf(aliases);
    intervals = List.copyOf(intervals);
  }

  private static ChordQuality ofLine(String line) {
    TableRow row = TableRow.of(line, " +");
    return new ChordQuality(row.name(), row.aliases(), row.intervals());
  }

  /**
   * Reads a whole suffix in any of its spellings, case kept ({@code m} and {@code M} differ); empty
   * when it is none.
   */
  public static Optional<ChordQuality> parse(String suffix) {
    return ChordSuffix.read(suffix).quality();
  }

  /** Every suffix there is a quality for: preferred ones first, then aliases. */
  public static List<String> suffixes() {
    return Stream.concat(
            ALL.stream().map(ChordQuality::suffix), ALL.stream().flatMap(q -> q.aliases.stream()))
        .filter(suffix -> !suffix.isEmpty())
        .toList();
  }

  /** Whether the chord has a note this many semitones (0 to 11) above its root. */
  public boolean has(int semitones) {
    return intervals.stream().anyMatch(i -> Math.floorMod(i.semitones(), 12) == semitones);
  }

  /** Whether it is a root and a fifth, neither major nor minor. */
  public boolean isPowerChord() {
    return intervals.equals(List.of(Interval.UNISON, Interval.FIFTH));
  }

  @Override
  public String toString() {
    return suffix;
  }
}

package hingetone.theory;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What may follow a chord's suffix to change it: {@code b5}, {@code #9}, {@code sus4}, {@code
 * add9}, {@code no3}.
 *
 * @param name the preferred spelling
 * @param aliases other spellings that are read
 * @param replaces the number of the chord note it takes the place of, 0 for none; a third or fifth
 *     must be there to be replaced
 * @param adds the note it brings, if any
 */
record Alteration(String name, List<String> aliases, int replaces, Optional<Interval> adds) {
  /** Every alteration, in the order in which a symbol names them. Common practice. */
  static final List<Alteration> ALL =
      List.of(
          of("sus2", 3, "2"),
          of("sus4", 3, "4", "sus"),
          of("b5", 5, "b5", "-5"),
          of("#5", 5, "#5", "+5", "+", "aug"),
          of("b6", 6, "b6"),
          of("b9", 9, "b9", "-9"),
          of("#9", 9, "#9", "+9"),
          of("#11", 11, "#11", "+11", "#4", "+4"),
          of("b13", 13, "b13", "-13"),
          of("add9", 0, "9", "add2"),
          of("add11", 0, "11", "add4"),
          of("add13", 0, "13", "add6"),
          of("addb9", 0, "b9"),
          of("add#9", 0, "#9"),
          of("add#11", 0, "#11", "add#4"),
          of("addb13", 0, "b13", "addb6"),
          new Alteration("no3", List.of("omit3"), 3, Optional.empty()),
          new Alteration("no5", List.of("omit5"), 5, Optional.empty()));

  private static final int FIFTH = 5;

  private static Alteration of(String name, int replaces, String adds, String... aliases) {
    return new Alteration(name, Arrays.asList(aliases), replaces, Interval.parse(adds));
  }

  /** Whether a chord with these notes can be changed so. */
  boolean fits(List<Interval> chord) {
    boolean present = chord.stream().anyMatch(note -> note.number() == replaces);
    boolean needed = replaces > 0 && replaces <= FIFTH;
    return (present || !needed) && adds.filter(chord::contains).isEmpty();
  }

  /**
   * Whether it needs parentheses right after a root, where {@code b} and {@code #} belong to it.
   */
  boolean startsWithAccidental() {
    return name.startsWith("b") || name.startsWith("#");
  }
}

package hingetone.handout;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A chord's kind as MusicXML 4.0 names it ({@code kind-value}), and the degrees in which the chord
 * differs from it.
 *
 * @param name the kind
 * @param intervals what the kind has
 */
record HarmonyKind(String name, List<Interval> intervals) {
  private static final List<HarmonyKind> ALL =
      List.of(
          of("major", "1 3 5"),
          of("minor", "1 b3 5"),
          of("dominant", "1 3 5 b7"),
          of("minor-seventh", "1 b3 5 b7"),
          of("major-seventh", "1 3 5 7"),
          of("power", "1 5"),
          of("suspended-fourth", "1 4 5"),
          of("suspended-second", "1 2 5"),
          of("diminished", "1 b3 b5"),
          of("half-diminished", "1 b3 b5 b7"),
          of("diminished-seventh", "1 b3 b5 bb7"),
          of("augmented", "1 3 #5"),
          of("augmented-seventh", "1 3 #5 b7"),
          of("major-minor", "1 b3 5 7"),
          of("major-sixth", "1 3 5 6"),
          of("minor-sixth", "1 b3 5 6"),
          of("dominant-ninth", "1 3 5 b7 9"),
          of("minor-ninth", "1 b3 5 b7 9"),
          of("major-ninth", "1 3 5 7 9"),
          of("dominant-11th", "1 3 5 b7 9 11"),
          of("minor-11th", "1 b3 5 b7 9 11"),
          of("dominant-13th", "1 3 5 b7 9 11 13"),
          of("minor-13th", "1 b3 5 b7 9 11 13"),
          of("major-13th", "1 3 5 7 9 11 13"));

  /** A degree in which a chord differs: {@code add}, {@code alter} or {@code subtract}. */
  record Degree(int value, int alter, String type) {}

  private static HarmonyKind of(String name, String degrees) {
    return new HarmonyKind(
        name, Arrays.stream(degrees.split(" ")).map(d -> Interval.parse(d).orElseThrow()).toList());
  }

  /** The kind from which a chord differs least. */
  static HarmonyKind of(Chord chord) {
    return ALL.stream()
        .min(Comparator.comparingInt(kind -> kind.differences(chord).size()))
        .orElseThrow();
  }

  /**
   * How a chord differs. The alteration of an added degree counts from the dominant chord's, of a
   * changed one from the kind's own, as the MusicXML reference says under {@code degree-alter}
   * (from memory).
   */
  List<Degree> differences(Chord chord) {
    List<Degree> degrees = new ArrayList<>();
    List<Interval> has = chord.quality().intervals();
    for (Interval interval : has) {
      if (!intervals.contains(interval)) {
        degrees.add(added(interval, has));
      }
    }
    for (Interval interval : intervals) {
      boolean altered =
          degrees.stream().anyMatch(d -> d.type.equals("alter") && d.value == interval.number());
      if (!has.contains(interval) && !altered) {
        degrees.add(new Degree(interval.number(), 0, "subtract"));
      }
    }
    return degrees;
  }

  private Degree added(Interval interval, List<Interval> has) {
    Optional<Interval> own =
        intervals.stream()
            .filter(i -> i.number() == interval.number() && !has.contains(i))
            .findFirst();
    if (own.isPresent()) {
      int alter = interval.alteration() - own.get().alteration();
      return new Degree(interval.number(), alter, "alter");
    }
    int fromDominant = interval.number() == 7 ? 1 : 0;
    return new Degree(interval.number(), interval.alteration() + fromDominant, "add");
  }
}

package hingetone.backing;

import hingetone.backing.Voicings.Choice;
import hingetone.groove.ChordStyle;
import hingetone.path.CheapestPath;
import hingetone.theory.Chord;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Function;

/**
 * Voices the chords of the whole lap so that the voices move as little as they can, the step from
 * the lap's end to its start included.
 */
final class VoiceLeading {
  private VoiceLeading() {}

  /** For each change its keys from low to high; none where there is no chord. */
  static List<List<Integer>> of(
      ChordChanges harmony, Function<ChordChanges.Change, ChordStyle> styles) {
    List<ChordChanges.Change> changes =
        harmony.changes().stream().filter(change -> change.chord().isPresent()).toList();
    List<List<Choice>> once = new ArrayList<>();
    for (ChordChanges.Change change : changes) {
      Chord chord = change.chord().orElseThrow();
      once.add(new Voicings(styles.apply(change)).of(chord, change.bar().key()));
    }
    // Three laps in a row: the middle one has come from a lap and goes on to a lap.
    List<List<Choice>> laps = new ArrayList<>();
    for (int lap = 0; lap < 3; lap++) {
      laps.addAll(once);
    }
    int size = changes.size();
    List<Choice> path =
        CheapestPath.through(
            laps,
            (i, choice) -> cost(choice, styles.apply(changes.get(i % size))),
            (i, from, to) -> movement(from.keys(), to.keys()));
    Iterator<Choice> middle = path.subList(size, 2 * size).iterator();
    return harmony.changes().stream()
        .map(change -> change.chord().isPresent() ? middle.next().keys() : List.<Integer>of())
        .toList();
  }

  /** A voicing's own dislike, and its distance from the middle of the register. */
  private static double cost(Choice choice, ChordStyle style) {
    double mean = choice.keys().stream().mapToInt(Integer::intValue).average().orElseThrow();
    return choice.dislike() + 0.03 * Math.abs(mean - (style.lowest() + style.highest()) / 2.0);
  }

  /**
   * Semitones moved, the voices paired from low to high and the sum taken for each voice; the top
   * voice, which is heard most, counts half as much again.
   */
  static double movement(List<Integer> from, List<Integer> to) {
    int voices = Math.min(from.size(), to.size());
    double sum = 0;
    for (int i = 1; i <= voices; i++) {
      int moved = Math.abs(to.get(to.size() - i) - from.get(from.size() - i));
      sum += i == 1 ? 1.5 * moved : moved;
    }
    return sum;
  }
}

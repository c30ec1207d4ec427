package hingetone.backing;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * What a lap asks of the players at a tempo, in milliseconds.
 *
 * @param hand the shortest time between two strokes of one of the drummer's hands, dealt out so
 *     that each stroke goes to the hand that has rested longer
 * @param together the most that the drummer's hands strike at once
 * @param foot the shortest time between two strokes of the bass drum
 * @param pluck the shortest time between two notes of the bass
 * @param leap the shortest time in which the bass leaps more than a fifth, an octave aside
 * @param leapsASecond the most such leaps within a second
 * @param stroke the shortest time between two strokes of the chords
 * @param hole the longest time in which nobody strikes anything
 */
record Playing(
    double hand,
    int together,
    double foot,
    double pluck,
    double leap,
    int leapsASecond,
    double stroke,
    double hole) {
  private static final Set<Integer> FEET = Set.of(35, 36, 44);

  /** Claps, tambourine, vibraslap, cabasa and maracas are another player's. */
  private static final Set<Integer> ANOTHER = Set.of(39, 54, 58, 69, 70);

  private static final Set<Integer> BASS_DRUMS = Set.of(35, 36);
  private static final int FIFTH = 7;
  private static final int OCTAVE = 12;

  /** A lap in one meter at a tempo, as a chart counts it. */
  static Playing of(Score lap, Meter meter, int tempo) {
    double quarter = 60_000.0 / tempo / meter.tempoNote().toUnits(1000) * 1000;
    List<Note> drums = notes(lap, Role.DRUMS);
    List<Note> bass = notes(lap, Role.BASS);
    List<Note> hands =
        drums.stream().filter(n -> !FEET.contains(n.key()) && !ANOTHER.contains(n.key())).toList();
    double[] leaps = leaps(bass, quarter);
    return new Playing(
        shortestOfTwoHands(times(hands, quarter)),
        most(times(hands, quarter), 0),
        shortest(times(drums.stream().filter(n -> BASS_DRUMS.contains(n.key())).toList(), quarter)),
        shortest(times(bass, quarter)),
        shortestLeap(bass, quarter),
        most(leaps, 1000),
        shortest(times(notes(lap, Role.CHORDS), quarter)),
        longest(times(lap.parts().stream().flatMap(p -> p.notes().stream()).toList(), quarter)));
  }

  private static List<Note> notes(Score lap, Role role) {
    return lap.part(role).map(Part::notes).orElse(List.of());
  }

  private static double[] times(List<Note> notes, double quarter) {
    return notes.stream()
        .mapToDouble(n -> n.onset().toUnits(1_000_000) * quarter / 1e6 + n.offsetMicros() / 1e3)
        .sorted()
        .toArray();
  }

  private static double shortestOfTwoHands(double[] times) {
    double shortest = Double.MAX_VALUE;
    double[] last = {-1e9, -1e9};
    for (double time : times) {
      int rested = last[0] <= last[1] ? 0 : 1;
      shortest = Math.min(shortest, time - last[rested]);
      last[rested] = time;
    }
    return shortest;
  }

  /** Between different times: notes of one stroke come together. */
  private static double shortest(double[] times) {
    double[] apart = Arrays.stream(times).distinct().toArray();
    double shortest = Double.MAX_VALUE;
    for (int i = 1; i < apart.length; i++) {
      shortest = Math.min(shortest, apart[i] - apart[i - 1]);
    }
    return shortest;
  }

  private static double longest(double[] times) {
    double longest = 0;
    for (int i = 1; i < times.length; i++) {
      longest = Math.max(longest, times[i] - times[i - 1]);
    }
    return longest;
  }

  /** The most of some sorted times within a window, at least one instant long. */
  private static int most(double[] times, double window) {
    int most = 0;
    int from = 0;
    for (int to = 0; to < times.length; to++) {
      while (times[to] - times[from] > window) {
        from++;
      }
      most = Math.max(most, to - from + 1);
    }
    return most;
  }

  private static double[] leaps(List<Note> bass, double quarter) {
    double[] times = times(bass, quarter);
    List<Double> leaps = new ArrayList<>();
    for (int i = 1; i < times.length; i++) {
      if (isLeap(bass, i)) {
        leaps.add(times[i]);
      }
    }
    return leaps.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double shortestLeap(List<Note> bass, double quarter) {
    double[] times = times(bass, quarter);
    double shortest = Double.MAX_VALUE;
    for (int i = 1; i < times.length; i++) {
      shortest = isLeap(bass, i) ? Math.min(shortest, times[i] - times[i - 1]) : shortest;
    }
    return shortest;
  }

  /** An octave is none: two strings over and two frets up, it lies under one hand. */
  private static boolean isLeap(List<Note> bass, int i) {
    int size = Math.abs(bass.get(i).key() - bass.get(i - 1).key());
    return size > FIFTH && size != OCTAVE;
  }
}

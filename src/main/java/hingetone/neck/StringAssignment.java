package hingetone.neck;

import hingetone.neck.Shape.Layout;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Shares consecutive notes out over the strings so that it costs the hand least: the cheapest of
 * all ways, found by working from the highest string back. (No use of {@code CheapestPath}: which
 * notes are left for a string depends on how many the strings before it took.)
 */
final class StringAssignment {
  /** Notes on a string at most: those of five frets. */
  static final int MOST_ON_A_STRING = 5;

  /** As the last fret: no end of the neck is heeded, on either side. */
  static final int ANYWHERE = Integer.MAX_VALUE;

  /** What a note more or less than the even number costs in an even shape, and in a position. */
  private static final double UNEVEN = 4;

  private static final double UNEVEN_IN_POSITION = 0.1;

  /**
   * A stretch that no hand has, on one string or from a string to the next: more than all that
   * follows, so that it is chosen only where there is no other way.
   */
  private static final double OUT_OF_REACH = 1000;

  /** A string with no note at all. */
  private static final double EMPTY = 1400;

  /** A stretch over five frets, and over each further one. */
  private static final double WIDE = 0.5;

  private static final double TOO_WIDE = 6;

  /** One fret between the hands on neighbouring strings, squared. */
  private static final double DRIFT = 0.3;

  /** One fret outside the four under the hand, squared. */
  private static final double OUTSIDE = 1;

  /** A fret beyond the neck. */
  private static final double OFF_THE_NECK = 1e6;

  private static final int NOT_YET = -1;

  private final Layout layout;
  private final int[] open;
  private final int[] notes;
  private final int even;
  private final int lastFret;
  private final int hand;

  /**
   * The least cost from a string on, and how many notes it takes for it; by the string, its first
   * note, and how many notes the string before took.
   */
  private final double[][][] least;

  private final int[][][] chosen;

  /** What the notes before one cost together for lying outside the hand, by string and note. */
  private final double[][] outsideBefore;

  private StringAssignment(
      Layout layout, int[] open, int[] notes, int even, int lastFret, int hand) {
    this.layout = layout;
    this.open = open;
    this.notes = notes;
    this.even = even;
    this.lastFret = lastFret;
    this.hand = hand;
    this.least = new double[open.length][notes.length + 1][MOST_ON_A_STRING + 1];
    this.chosen = new int[open.length][notes.length + 1][MOST_ON_A_STRING + 1];
    for (int[][] ofString : chosen) {
      for (int[] ofNote : ofString) {
        Arrays.fill(ofNote, NOT_YET);
      }
    }
    this.outsideBefore = outsideBefore();
  }

  private double[][] outsideBefore() {
    double[][] sums = new double[open.length][notes.length + 1];
    for (int string = 0; string < open.length; string++) {
      for (int note = 0; note < notes.length; note++) {
        sums[string][note + 1] = sums[string][note] + OUTSIDE * square(outside(fret(string, note)));
      }
    }
    return sums;
  }

  /**
   * How many of the notes go on each string.
   *
   * @param open MIDI numbers of the open strings, ascending
   * @param notes MIDI numbers of the notes, ascending, more than enough
   * @param scaleSize notes of the scale in an octave
   * @param lastFret the end of the neck, or {@link #ANYWHERE}
   */
  static int[] best(Layout layout, int[] open, int[] notes, int scaleSize, int lastFret) {
    int even = Math.max(1, (int) Math.round(onAString(scaleSize)));
    int start = notes[0] - open[0];
    IntStream hands =
        layout == Layout.EVEN ? IntStream.of(start) : IntStream.rangeClosed(start - 1, start);
    return hands
        .mapToObj(hand -> new StringAssignment(layout, open, notes, even, lastFret, hand))
        .min(Comparator.comparingDouble(s -> s.leastFrom(0, 0, 0)))
        .orElseThrow()
        .counts();
  }

  /**
   * Notes of a scale that five semitones hold (a fourth, the usual step between strings): about two
   * of a five-note scale, three of a seven-note one.
   */
  static double onAString(int scaleSize) {
    return scaleSize * 5 / 12.0;
  }

  private int[] counts() {
    leastFrom(0, 0, 0);
    int[] counts = new int[open.length];
    int note = 0;
    int before = 0;
    for (int string = 0; string < open.length; string++) {
      before = chosen[string][note][before];
      counts[string] = before;
      note += before;
    }
    return counts;
  }

  /**
   * The least cost of the strings from one on.
   *
   * @param note its first note
   * @param before how many notes the string before took
   */
  private double leastFrom(int string, int note, int before) {
    if (string == open.length) {
      return 0;
    }
    if (chosen[string][note][before] == NOT_YET) {
      choose(string, note, before);
    }
    return least[string][note][before];
  }

  private void choose(int string, int note, int before) {
    boolean isEven = layout == Layout.EVEN;
    int fewest = isEven ? Math.max(1, even - 1) : string == 0 ? 1 : 0;
    int most = isEven ? Math.min(even + 1, MOST_ON_A_STRING) : MOST_ON_A_STRING;
    least[string][note][before] = Double.MAX_VALUE;
    for (int count = fewest; count <= most; count++) {
      double cost = cost(string, note, before, count) + leastFrom(string + 1, note + count, count);
      if (cost < least[string][note][before]) {
        least[string][note][before] = cost;
        chosen[string][note][before] = count;
      }
    }
  }

  private double cost(int string, int first, int before, int count) {
    double uneven = Math.abs(count - even) * (layout == Layout.EVEN ? UNEVEN : UNEVEN_IN_POSITION);
    if (count == 0) {
      return uneven + EMPTY;
    }
    int low = fret(string, first);
    int high = fret(string, first + count - 1);
    double cost = uneven + stretch(high - low + 1) + offTheNeck(low, high);
    if (before > 0) {
      int lowBefore = fret(string - 1, first - before);
      int highBefore = fret(string - 1, first - 1);
      cost += jump(Math.max(high, highBefore) - Math.min(low, lowBefore) + 1);
      cost += layout == Layout.EVEN ? DRIFT * square(low - lowBefore) : 0;
    }
    if (layout == Layout.POSITION) {
      cost += outsideBefore[string][first + count] - outsideBefore[string][first];
    }
    return cost;
  }

  private static double stretch(int width) {
    int over = width - Shape.HAND;
    return over <= 0 ? 0 : WIDE + TOO_WIDE * (over - 1) + (over > 1 ? OUT_OF_REACH : 0);
  }

  /** What the frets on two strings together cost. */
  private static double jump(int width) {
    int over = width - Shape.WITH_A_SHIFT;
    return over <= 0 ? 0 : OUT_OF_REACH + TOO_WIDE * over;
  }

  private double offTheNeck(int low, int high) {
    return lastFret != ANYWHERE && (low < 0 || high > lastFret) ? OFF_THE_NECK : 0;
  }

  private int outside(int fret) {
    return Math.max(0, Math.max(hand - fret, fret - (hand + Shape.HAND - 1)));
  }

  private static double square(double x) {
    return x * x;
  }

  private int fret(int string, int note) {
    return notes[note] - open[string];
  }
}

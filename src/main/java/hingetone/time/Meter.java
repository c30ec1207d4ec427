package hingetone.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A meter and what its beat is: the quarter in x/4, the dotted quarter in 6/8, 9/8 and 12/8, the
 * eighth in 5/8 and 7/8, the half in x/2.
 *
 * @param numerator the upper figure, 1 to 32
 * @param denominator the lower figure: 2, 4, 8 or 16
 * @param grouping how many beats each group of the bar has, adding up to {@link #beatsPerBar()};
 *     the first beat of each group is strong
 */
public record Meter(int numerator, int denominator, List<Integer> grouping) {
  public static final Meter COMMON = of(4, 4);

  public Meter {
    grouping = List.copyOf(grouping);
    int sum = grouping.stream().mapToInt(Integer::intValue).sum();
    if (numerator < 1 || numerator > 32 || !List.of(2, 4, 8, 16).contains(denominator)) {
      throw new IllegalArgumentException("no such meter: " + numerator + "/" + denominator);
    }
    if (sum != beatsPerBar(numerator, denominator) || grouping.stream().anyMatch(g -> g < 1)) {
      throw new IllegalArgumentException("grouping " + grouping + " does not fill the bar");
    }
  }

  /** A meter with the usual grouping: 4/4 in 2+2, 5/4 in 3+2, 7/8 in 2+2+3, 12/8 in 2+2. */
  public static Meter of(int numerator, int denominator) {
    return new Meter(numerator, denominator, usualGrouping(beatsPerBar(numerator, denominator)));
  }

  /** Reads {@code 7/8}; empty when it is no meter. */
  public static Optional<Meter> parse(String text) {
    String[] figures = text.strip().split("/", -1);
    if (figures.length != 2 || !figures[0].matches("[0-9]{1,2}")) {
      return Optional.empty();
    }
    int numerator = Integer.parseInt(figures[0]);
    boolean known = List.of("2", "4", "8", "16").contains(figures[1]);
    return known && numerator >= 1 && numerator <= 32
        ? Optional.of(of(numerator, Integer.parseInt(figures[1])))
        : Optional.empty();
  }

  private static List<Integer> usualGrouping(int beats) {
    if (beats <= 3) {
      return List.of(beats);
    }
    if (beats == 5) {
      return List.of(3, 2);
    }
    List<Integer> groups = new ArrayList<>();
    int left = beats;
    while (left > 3) {
      groups.add(2);
      left -= 2;
    }
    groups.add(left);
    return groups;
  }

  /** The same meter with another grouping of its beats. */
  public Meter withGrouping(Integer... groups) {
    return new Meter(numerator, denominator, Arrays.asList(groups));
  }

  private static int beatsPerBar(int numerator, int denominator) {
    return isCompound(numerator, denominator) ? numerator / 3 : numerator;
  }

  private static boolean isCompound(int numerator, int denominator) {
    return denominator >= 8 && numerator % 3 == 0 && numerator > 3;
  }

  /** Whether the beat divides in three: 6/8, 9/8, 12/8. */
  public boolean isCompound() {
    return isCompound(numerator, denominator);
  }

  /** Beats in a bar: 4 in 4/4 and 12/8, 7 in 7/8. */
  public int beatsPerBar() {
    return beatsPerBar(numerator, denominator);
  }

  /** Length of one beat in quarter notes: 1, 3/2 or 1/2. */
  public Beats beatLength() {
    return Beats.of(isCompound() ? 12 : 4, denominator);
  }

  /** Length of a bar in quarter notes: 7/2 in 7/8. */
  public Beats barLength() {
    return Beats.of(4L * numerator, denominator);
  }

  /**
   * Length in quarter notes of the note that {@code tempo} counts: the dotted quarter in compound
   * meters, else the quarter.
   */
  public Beats tempoNote() {
    return isCompound() ? beatLength() : Beats.ONE;
  }

  /** The strong beats of the bar, counted from 1: 1 and 3 in 4/4, 1, 3 and 5 in 7/8 as 2+2+3. */
  public List<Integer> strongBeats() {
    List<Integer> strong = new ArrayList<>();
    int beat = 1;
    for (int group : grouping) {
      strong.add(beat);
      beat += group;
    }
    return List.copyOf(strong);
  }

  /** Whether a beat, counted from 1, may be whole and strong. */
  public boolean isStrong(Beats beat) {
    return beat.denominator() == 1 && strongBeats().contains((int) beat.numerator());
  }

  /** Beats of this meter as quarter notes. */
  public Beats toQuarters(Beats beats) {
    return beats.times(beatLength());
  }

  /** Quarter notes as beats of this meter. */
  public Beats toBeats(Beats quarters) {
    return quarters.dividedBy(beatLength());
  }

  /** The whole beats of a bar, counted from 1. */
  public List<Beats> beats() {
    return IntStream.rangeClosed(1, beatsPerBar()).mapToObj(Beats::of).toList();
  }

  @Override
  public String toString() {
    return numerator + "/" + denominator;
  }
}

package hingetone.neck;

import hingetone.neck.Shape.Layout;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Shares consecutive notes out over the strings so that it costs the hand least: the cheapest of
 * all ways, found by working from the highest string back.
 */
final class Sharing {
  static final int MOST_ON_A_STRING = 5;

  /** As the last fret: no end of the neck is heeded, on either side. */
  static final int ANYWHERE = Integer.MAX_VALUE;

  /** What a note more or less than the even number costs in an even shape, and in a position. */
  private static final double UNEVEN = 4;

  private static final double UNEVEN_IN_POSITION = 0.1;

  /** A string with no note at all. */
  private static final double EMPTY = 400;

  /** A stretch over five frets, and over each further one. */
  private static final double WIDE = 0.5;

  private static final double TOO_WIDE = 6;

  /** One fret between the hands on neighbouring strings, squared. */
  private static final double DRIFT = 0.3;

  /** One fret outside the four under the hand, squared. */
  private static final double OUTSIDE = 1;

  /** A fret beyond the neck. */
  private static final double OFF_THE_NECK = 1e6;

  private record Place(int string, int note, int handBefore) {}

  private record Choice(double cost, int count) {}

  private final Layout layout;
  private final int[] open;
  private final int[] notes;
  private final int even;
  private final int lastFret;
  private final int hand;
  private final Map<Place, Choice> known = new HashMap<>();

  private Sharing(Layout layout, int[] open, int[] notes, int even, int lastFret, int hand) {
    this.layout = layout;
    this.open = open;
    this.notes = notes;
    this.even = even;
    this.lastFret = lastFret;
    this.hand = hand;
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
        .mapToObj(hand -> new Sharing(layout, open, notes, even, lastFret, hand))
        .min(java.util.Comparator.comparingDouble(s -> s.from(s.beginning()).cost))
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

  private Place beginning() {
    return new Place(0, 0, hand);
  }

  private int[] counts() {
    int[] counts = new int[open.length];
    Place place = beginning();
    for (int string = 0; string < open.length; string++) {
      counts[string] = from(place).count;
      place = after(place, counts[string]);
    }
    return counts;
  }

  private Place after(Place place, int count) {
    boolean moves = layout == Layout.EVEN && count > 0;
    int handAfter = moves ? fret(place.string, place.note) : place.handBefore;
    return new Place(place.string + 1, place.note + count, handAfter);
  }

  private Choice from(Place place) {
    if (place.string == open.length) {
      return new Choice(0, 0);
    }
    Choice before = known.get(place);
    if (before != null) {
      return before;
    }
    boolean isEven = layout == Layout.EVEN;
    int fewest = isEven ? Math.max(1, even - 1) : place.string == 0 ? 1 : 0;
    int most = isEven ? Math.min(even + 1, MOST_ON_A_STRING) : MOST_ON_A_STRING;
    Choice best = new Choice(Double.MAX_VALUE, 0);
    for (int count = fewest; count <= most; count++) {
      double cost = cost(place, count) + from(after(place, count)).cost;
      best = cost < best.cost ? new Choice(cost, count) : best;
    }
    known.put(place, best);
    return best;
  }

  private double cost(Place place, int count) {
    double uneven = Math.abs(count - even) * (layout == Layout.EVEN ? UNEVEN : UNEVEN_IN_POSITION);
    if (count == 0) {
      return uneven + EMPTY;
    }
    int low = fret(place.string, place.note);
    int high = fret(place.string, place.note + count - 1);
    double cost = uneven + stretch(high - low + 1) + offTheNeck(low, high);
    if (layout == Layout.EVEN) {
      return cost + DRIFT * square(low - place.handBefore);
    }
    for (int note = place.note; note < place.note + count; note++) {
      cost += OUTSIDE * square(outside(fret(place.string, note)));
    }
    return cost;
  }

  private double stretch(int width) {
    int over = width - Shape.HAND;
    return over <= 0 ? 0 : WIDE + TOO_WIDE * (over - 1);
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

package hingetone.hearing;

import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;

/**
 * A division of the quarter note in which a beat is written.
 *
 * @param parts how many
 * @param cost what writing in it costs against a mean distance in quarter notes
 */
record BeatGrid(int parts, double cost) {
  /** Parts of a quarter by which a triplet must be nearer than a sixteenth. */
  static final double CLEARLY_NEARER = 0.03;

  /** How much before its beat a moment belongs to it, in quarter notes. */
  private static final double EARLY = 0.125;

  /** More than a note can be away from its sixteenth, in quarter notes. */
  private static final double ONLY_WHERE_FAST = 0.15;

  /** Sixteenths, triplets, thirty-seconds, sextuplets, sixty-fourths. */
  private static final List<BeatGrid> GRIDS =
      List.of(
          new BeatGrid(4, 0),
          new BeatGrid(3, CLEARLY_NEARER),
          new BeatGrid(8, ONLY_WHERE_FAST),
          new BeatGrid(6, ONLY_WHERE_FAST),
          new BeatGrid(16, 2 * ONLY_WHERE_FAST));

  private static final Beats CLOSEST = Beats.of(1, 16);

  /**
   * The places of moments that follow one another, each after the one before: beat by beat on the
   * coarsest grid that they keep to and that keeps them apart.
   *
   * @param moments in quarter notes, rising
   */
  static List<Beats> places(List<Double> moments) {
    List<Beats> places = new ArrayList<>();
    List<Double> beat = new ArrayList<>();
    long now = Long.MIN_VALUE;
    for (double quarters : moments) {
      long number = (long) Math.floor(quarters + EARLY);
      if (number != now) {
        add(places, beat);
        beat.clear();
        now = number;
      }
      beat.add(quarters);
    }
    add(places, beat);
    return places;
  }

  private static void add(List<Beats> places, List<Double> beat) {
    BeatGrid best = GRIDS.get(0);
    for (BeatGrid grid : GRIDS) {
      best = grid.cost(beat) < best.cost(beat) ? grid : best;
    }
    for (double quarters : beat) {
      Beats place = best.nearest(quarters);
      Beats last = places.isEmpty() ? place : places.get(places.size() - 1);
      boolean free = places.isEmpty() || place.isAfter(last);
      places.add(free ? place : last.plus(CLOSEST));
    }
  }

  Beats nearest(double quarters) {
    return Beats.of(Math.round(quarters * parts), parts);
  }

  double cost(List<Double> beat) {
    double away = 0;
    int clashes = 0;
    long last = Long.MIN_VALUE;
    for (double quarters : beat) {
      long place = Math.round(quarters * parts);
      away += Math.abs((double) place / parts - quarters) / beat.size();
      clashes += place <= last ? 1 : 0;
      last = place;
    }
    return away + cost + clashes;
  }
}

package hingetone.sequencer;

import hingetone.time.Beats;

/**
 * A bar with its place in what is played.
 *
 * @param plan its number, counting every bar planned
 * @param step the bar, and how it came about
 * @param lap the lap, 0 in the count-in
 * @param music what is in it
 * @param start where it starts, in quarter notes played
 * @param course what held when it was planned, itself included
 * @param before what held before it was planned
 * @param silent whether the band drops out
 * @param bare whether the count-in has no notes of its own, so that the click counts
 */
record PlannedBar(
    int plan,
    BarOrder.Step step,
    int lap,
    Lap.Bar music,
    Beats start,
    PassChanges course,
    PassChanges before,
    boolean silent,
    boolean bare) {

  Beats end() {
    return start.plus(music.length());
  }

  int bar() {
    return step.bar();
  }

  /** How long a beat lasts where a quarter note lasts so long. */
  double beatNanos(double quarterNanos) {
    return music.meter().beatLength().toDouble() * quarterNanos;
  }
}

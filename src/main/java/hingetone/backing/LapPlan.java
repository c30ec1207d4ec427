package hingetone.backing;

import hingetone.theory.Chord;
import hingetone.time.Beats;
import hingetone.time.LastBegun;
import java.util.List;

/**
 * One lap as the players have it before them.
 *
 * @param plans its bars
 * @param harmony its chords
 * @param length in quarter notes
 */
record LapPlan(List<BarPlan> plans, ChordChanges harmony, Beats length) {
  LapPlan {
    plans = List.copyOf(plans);
  }

  /** The bar that holds at a place; the last one at and past the end. */
  BarPlan planAt(Beats place) {
    int last = LastBegun.index(plans.size(), i -> !plans.get(i).bar().start().isAfter(place));
    return plans.get(Math.max(0, last));
  }

  /** A place drawn straight as it is played, swing included. */
  Beats played(Beats place) {
    BarPlan plan = planAt(place);
    return plan.played(place.minus(plan.bar().start()));
  }

  /** The chord that the band comes home to: the first one, or the chord after the lap's last. */
  Chord home() {
    return harmony.first().orElseGet(() -> onTonic(plans.get(0)));
  }

  private static Chord onTonic(BarPlan plan) {
    String quality = plan.bar().key().isMinor() ? "m" : "";
    return Chord.parse(plan.bar().key().tonic() + quality).orElseThrow();
  }
}

package hingetone.backing;

import hingetone.theory.Chord;
import hingetone.time.Beats;
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
    int low = 0;
    int high = plans.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (plans.get(middle).bar().start().isAfter(place)) {
        high = middle - 1;
      } else {
        low = middle;
      }
    }
    return plans.get(low);
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

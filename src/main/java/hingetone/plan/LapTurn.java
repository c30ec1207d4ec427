package hingetone.plan;

import hingetone.chart.Form.Bar;
import hingetone.chart.PhraseTurn.Role;
import hingetone.time.Beats;

/**
 * One turn of a lap before it is placed to the beat.
 *
 * @param place the entry of the form it stands in, from 0
 * @param first the bar its space starts with
 * @param bars the length of its space in bars
 * @param role what it does
 * @param from where a returning statement comes from
 */
record LapTurn(int place, Bar first, int bars, Role role, Source from) {
  /** Where a statement's opening comes from. */
  enum Source {
    NEW,
    /** The statement before it. */
    LAST,
    /** The first statement of this lap. */
    OPENING,
    /** The first statement of the lap before. */
    LAST_LAP
  }

  /** Where its space starts, in quarter notes from the start of the lap. */
  Beats start() {
    return first.start();
  }

  /** Where its space ends, in quarter notes from the start of the lap. */
  Beats end() {
    return start().plus(first.meter().barLength().times(bars));
  }

  boolean isRest() {
    return role == Role.REST;
  }
}

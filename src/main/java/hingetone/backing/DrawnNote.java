package hingetone.backing;

import hingetone.groove.StepLine;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;

/**
 * A drawn note or stroke: a sign and how long it is held.
 *
 * @param start as drawn, in quarter notes from the lap's start
 * @param end as drawn
 * @param sign the sign
 * @param plan the bar it starts in
 */
record DrawnNote(Beats start, Beats end, char sign, BarPlan plan) {
  DrawnNote withSign(char other) {
    return new DrawnNote(start, end, other, plan);
  }

  DrawnNote withEnd(Beats other) {
    return new DrawnNote(start, other, sign, plan);
  }

  Beats inBar() {
    return start.minus(plan.bar().start());
  }

  /** The signs of a bar; a hold at its start lengthens {@code before}'s last where they touch. */
  static List<DrawnNote> read(String signs, BarPlan plan, List<DrawnNote> before) {
    Meter meter = plan.bar().meter();
    Beats step = meter.barLength().dividedBy(signs.length());
    List<DrawnNote> read = new ArrayList<>(before);
    for (int i = 0; i < signs.length(); i++) {
      Beats start = plan.bar().start().plus(step.times(i));
      char c = signs.charAt(i);
      DrawnNote last = read.isEmpty() ? null : read.get(read.size() - 1);
      if (c == StepLine.HOLD && last != null && last.end.equals(start)) {
        read.set(read.size() - 1, last.withEnd(start.plus(step)));
      } else if (c != StepLine.NOTHING && c != StepLine.HOLD) {
        read.add(new DrawnNote(start, start.plus(step), c, plan));
      }
    }
    return read;
  }
}

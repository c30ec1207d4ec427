package hingetone.screen;

import hingetone.chart.Form.Bar;
import java.util.Optional;

/** The way the band takes through the bars: on through the form, or round in a loop. */
final class Route {
  /** Bars played before and after a crossing when it is looped. */
  private static final int BARS_AROUND = 2;

  private Route() {}

  /** The bar heard now, on the count of the laps; bar 1 while counting in. */
  static int bar(State state) {
    return Math.max(1, state.position().bar());
  }

  /** The bar heard after another one; in a loop its first bar follows its last. */
  static int after(State state, int bar) {
    int inLap = state.facts().inLap(bar);
    return state
        .band()
        .loop()
        .filter(loop -> inLap == loop.last())
        .map(loop -> bar - loop.last() + loop.first())
        .orElse(bar + 1);
  }

  /** The first bar in the lap of the section after this one, the first section's after the last. */
  static int nextSection(State state) {
    Bar bar = state.facts().form().bar(bar(state));
    int next = bar.number() - bar.inSection() + bar.section().bars().size() + 1;
    return next > state.facts().form().bars().size() ? 1 : next;
  }

  /** The first bar in the lap of this section, or of the one before where this has just begun. */
  static int previousSection(State state) {
    Bar bar = state.facts().form().bar(bar(state));
    int first = bar.number() - bar.inSection() + 1;
    if (bar.inSection() > 1) {
      return first;
    }
    int length = state.facts().form().bars().size();
    Bar before = state.facts().form().bar(first == 1 ? length : first - 1);
    return before.number() - before.inSection() + 1;
  }

  /** The bars of this section, in the lap. */
  static Band.Loop section(State state) {
    Bar bar = state.facts().form().bar(bar(state));
    int first = bar.number() - bar.inSection() + 1;
    return new Band.Loop(first, first + bar.section().bars().size() - 1);
  }

  /** The bars around the next crossing within the lap; the seam cannot be looped over. */
  static Optional<Band.Loop> aroundNextCrossing(State state) {
    int length = state.facts().form().bars().size();
    int now = state.facts().inLap(bar(state));
    return state.facts().crossings().stream()
        .map(Facts.Crossing::atBar)
        .filter(at -> at <= length && at > 1)
        .min((a, b) -> Integer.compare(ahead(a, now, length), ahead(b, now, length)))
        .map(
            at ->
                new Band.Loop(
                    Math.max(1, at - BARS_AROUND), Math.min(length, at + BARS_AROUND - 1)));
  }

  private static int ahead(int bar, int now, int length) {
    return bar > now ? bar - now : bar - now + length;
  }
}

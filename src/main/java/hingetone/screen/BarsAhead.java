package hingetone.screen;

import hingetone.chart.Form.Bar;
import hingetone.sequencer.Command;

/** The way the band takes through the bars, which count on through the laps. */
public final class BarsAhead {
  private BarsAhead() {}

  /** The bar heard now; bar 1 while counting in. */
  static int bar(State state) {
    return Math.max(1, state.position().bar());
  }

  /** The bar heard after another one; in a loop its first bar follows its last. */
  public static int after(State state, int bar) {
    return state
        .status()
        .loop()
        .filter(loop -> bar == loop.lastBar())
        .map(Command.Loop::firstBar)
        .orElse(bar + 1);
  }

  /** Whether nothing is heard after a bar. */
  public static boolean isLast(State state, int bar) {
    boolean last = state.status().end().filter(end -> bar >= end.lastBar()).isPresent();
    return last && !isLooped(state, bar);
  }

  /** Whether a bar belongs to the ending, which comes after the last lap. */
  public static boolean isEnding(State state, int bar) {
    return state.status().end().filter(end -> bar > end.bars()).isPresent();
  }

  /** Whether a bar is one of those that go round. */
  public static boolean isLooped(State state, int bar) {
    return state.status().loop().filter(l -> bar >= l.firstBar() && bar <= l.lastBar()).isPresent();
  }

  /** The bars of this section. */
  static Command.Loop section(State state) {
    int now = bar(state);
    Bar bar = state.facts().form().bar(now);
    int first = now - bar.inSection() + 1;
    return new Command.Loop(first, first + bar.section().bars().size() - 1);
  }

  /** A loop that begins with this bar and ends where one did, else with the lap. */
  static Command.Loop fromHere(State state) {
    int now = bar(state);
    int length = state.facts().form().bars().size();
    int lapEnd = state.facts().form().lapOf(now) * length;
    int last =
        state.status().loop().map(Command.Loop::lastBar).filter(l -> l >= now).orElse(lapEnd);
    return new Command.Loop(now, last);
  }

  /** A loop that ends with this bar and begins where one did, else with the lap. */
  static Command.Loop toHere(State state) {
    int now = bar(state);
    int length = state.facts().form().bars().size();
    int lapStart = (state.facts().form().lapOf(now) - 1) * length + 1;
    int first =
        state.status().loop().map(Command.Loop::firstBar).filter(f -> f <= now).orElse(lapStart);
    return new Command.Loop(first, now);
  }

  /** The first bar of the section after this one. */
  static int nextSection(State state) {
    return section(state).lastBar() + 1;
  }

  /** The first bar of this section, or of the one before where this has just begun. */
  static int previousSection(State state) {
    int first = section(state).firstBar();
    if (first < bar(state) || first == 1) {
      return first;
    }
    return first - state.facts().form().bar(first - 1).inSection();
  }
}

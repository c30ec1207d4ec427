package hingetone.screen;

import hingetone.chart.Form.Bar;
import java.util.OptionalInt;

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
        .band()
        .loop()
        .filter(loop -> bar == loop.last())
        .map(BandSettings.Loop::first)
        .orElse(bar + 1);
  }

  /** Whether nothing is heard after a bar. */
  public static boolean isLast(State state, int bar) {
    OptionalInt last = state.band().lastBar();
    return last.isPresent() && bar >= last.getAsInt() && !isLooped(state, bar);
  }

  /** Whether a bar belongs to the ending, which comes after the last lap. */
  public static boolean isEnding(State state, int bar) {
    OptionalInt last = state.band().lastBar();
    int length = state.facts().form().bars().size();
    return last.isPresent() && bar > last.getAsInt() / length * length;
  }

  /** Whether a bar is one of those that go round. */
  public static boolean isLooped(State state, int bar) {
    return state.band().loop().filter(l -> bar >= l.first() && bar <= l.last()).isPresent();
  }

  /** The bars of this section. */
  static BandSettings.Loop section(State state) {
    int now = bar(state);
    Bar bar = state.facts().form().bar(now);
    int first = now - bar.inSection() + 1;
    return new BandSettings.Loop(first, first + bar.section().bars().size() - 1);
  }

  /** A loop that begins with this bar and ends where one did, else with the lap. */
  static BandSettings.Loop fromHere(State state) {
    int now = bar(state);
    int length = state.facts().form().bars().size();
    int lapEnd = state.facts().form().lapOf(now) * length;
    int last =
        state.band().loop().map(BandSettings.Loop::last).filter(l -> l >= now).orElse(lapEnd);
    return new BandSettings.Loop(now, last);
  }

  /** A loop that ends with this bar and begins where one did, else with the lap. */
  static BandSettings.Loop toHere(State state) {
    int now = bar(state);
    int length = state.facts().form().bars().size();
    int lapStart = (state.facts().form().lapOf(now) - 1) * length + 1;
    int first =
        state.band().loop().map(BandSettings.Loop::first).filter(f -> f <= now).orElse(lapStart);
    return new BandSettings.Loop(first, now);
  }

  /** The first bar of the section after this one. */
  static int nextSection(State state) {
    return section(state).last() + 1;
  }

  /** The first bar of this section, or of the one before where this has just begun. */
  static int previousSection(State state) {
    int first = section(state).first();
    if (first < bar(state) || first == 1) {
      return first;
    }
    return first - state.facts().form().bar(first - 1).inSection();
  }
}

package hingetone.screen.view;

import hingetone.chart.ChartBar.Slot;
import hingetone.chart.Form.Bar;
import hingetone.screen.BarsAhead;
import hingetone.screen.State;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;

/**
 * Which bars stand on a line of the screen and at which columns, in true proportion of time.
 *
 * <p>The scale is one for the whole form, so that a bar is as wide as it is long wherever it
 * stands.
 */
final class BarRuler {
  private static final List<Integer> BARS_A_LINE = List.of(16, 12, 8, 6, 4, 3, 2, 1);
  private static final double FEWEST_COLUMNS_A_BEAT = 1.25;

  private final State state;
  private final int width;
  private final List<Integer> bars = new ArrayList<>();
  private final List<Integer> columns = new ArrayList<>();

  private BarRuler(State state, int width) {
    this.state = state;
    this.width = width;
  }

  /** The line with the bar heard now, or one of the lines after it. */
  static BarRuler of(State state, Outlook moment, int width, int line) {
    BarRuler ruler = new BarRuler(state, width);
    List<Bar> form = state.facts().form().bars();
    double longest = form.stream().mapToDouble(BarRuler::seconds).max().orElseThrow();
    double tightest = form.stream().mapToDouble(BarRuler::columnsASecond).max().orElseThrow();
    int most =
        BARS_A_LINE.stream().filter(n -> width / (n * longest) >= tightest).findFirst().orElse(1);
    int first = ruler.firstBar(moment, most);
    ruler.place(first, width / (most * longest));
    for (int i = 0; i < line && ruler.size() > 0; i++) {
      ruler.goOn(width / (most * longest));
    }
    return ruler;
  }

  /** The next line; an empty one where the music is over. */
  private void goOn(double columnsASecond) {
    int last = bars.get(size() - 1);
    boolean cut = isCut(size() - 1);
    bars.clear();
    columns.clear();
    if (cut) {
      place(last, columnsASecond);
    } else if (!BarsAhead.isLast(state, last)) {
      place(BarsAhead.after(state, last), columnsASecond);
    }
  }

  /** Columns a second that a bar needs for its chords and beats to be told apart. */
  private static double columnsASecond(Bar bar) {
    double beat = seconds(bar) / bar.meter().beatsPerBar();
    double most = FEWEST_COLUMNS_A_BEAT / beat;
    for (Slot slot : bar.chords().chords()) {
      int room = Outlook.name(slot).length() + 2;
      most = Math.max(most, room / (slot.beats().toDouble() * beat));
    }
    return most;
  }

  private static double seconds(Bar bar) {
    Beats quartersAMinute = bar.section().tempo().quartersPerMinute(bar.meter());
    return 60 * bar.meter().barLength().toDouble() / quartersAMinute.toDouble();
  }

  /** The bar the line starts with: it moves on by half a line, and anew with each section. */
  private int firstBar(Outlook moment, int most) {
    int now = moment.position().bar();
    if (now < 1) {
      return now;
    }
    int first = now - (moment.bar().inSection() - 1) % Math.max(1, most / 2);
    return BarsAhead.isLooped(state, now)
        ? Math.max(first, state.status().loop().orElseThrow().firstBar())
        : first;
  }

  private void place(int first, double columnsASecond) {
    double at = 0;
    int number = first;
    while (Math.round(at) < width) {
      bars.add(number);
      columns.add((int) Math.round(at));
      at += Math.max(1, seconds(state.facts().form().bar(number)) * columnsASecond);
      if (BarsAhead.isLast(state, number)) {
        break;
      }
      number = BarsAhead.after(state, number);
    }
    columns.add((int) Math.round(at));
  }

  int size() {
    return bars.size();
  }

  /** The number of the bar at a place of the line, laps counted on. */
  int number(int index) {
    return bars.get(index);
  }

  Bar bar(int index) {
    return state.facts().form().bar(number(index));
  }

  /** Where a number of the line stands on it; −1 where it does not. */
  int indexOf(int number) {
    return bars.indexOf(number);
  }

  int start(int index) {
    return columns.get(index);
  }

  int end(int index) {
    return columns.get(index + 1);
  }

  /** Whether a bar goes on past the edge of the screen. */
  boolean isCut(int index) {
    return end(index) > width;
  }

  /** The column of a beat of the bar at a place of the line. */
  int column(int index, Beats beat) {
    double share = beat.minus(Beats.ONE).toDouble() / bar(index).meter().beatsPerBar();
    return start(index) + (int) Math.round(share * (end(index) - start(index)));
  }

  /** The column of a position in the bar at a place of the line, held within that bar. */
  int column(int index, Position position) {
    if (position.bar() < number(index)) {
      return start(index);
    }
    return position.bar() > number(index) ? end(index) : column(index, position.beat());
  }
}

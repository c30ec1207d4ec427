package hingetone.screen.view;

import hingetone.screen.BandSettings;
import hingetone.screen.BarsAhead;
import hingetone.screen.State;
import hingetone.screen.State.Phase;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Style;
import hingetone.text.DisplayWidth;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Where we are: what the band does, section, key, bar, lap, tempo; the title where room is left.
 */
final class PlacePanel {
  private static final String BETWEEN = "   ";

  private PlacePanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    if (canvas.rows() == 0) {
      return;
    }
    int column = 0;
    if (state.phase() != Phase.PLAYING || state.countsIn()) {
      column = canvas.put(0, 0, " " + doing(state) + " ", Style.LIT) + 1;
    }
    column = canvas.put(0, column, moment.bar().section().name(), Style.STRONG);
    column = canvas.put(0, column, "  " + moment.bar().key(), Style.PLAIN);
    column = write(canvas, column, words(state, moment), canvas.columns());
    String title = state.facts().title();
    int titleAt = canvas.columns() - DisplayWidth.of(title);
    boolean fits = column + BETWEEN.length() <= titleAt;
    canvas.put(0, fits ? titleAt : canvas.columns(), title, Style.QUIET);
    List<String> last = List.of(moment.meter().toString(), state.facts().groove());
    write(canvas, column, last, fits ? titleAt - BETWEEN.length() : canvas.columns());
  }

  /** Writes the words that fit before a column; gives the column after them. */
  private static int write(Canvas canvas, int column, List<String> words, int end) {
    int at = column;
    for (String word : words) {
      if (!word.isEmpty() && at + BETWEEN.length() + DisplayWidth.of(word) <= end) {
        at = canvas.put(0, at, BETWEEN + word, Style.PLAIN);
      }
    }
    return at;
  }

  /** What the band does, in a word. */
  static String doing(State state) {
    return switch (state.phase()) {
      case STOPPED -> "stopped";
      case PAUSED -> "paused";
      case PLAYING -> state.countsIn() ? "count-in" : "playing";
    };
  }

  private static int inLap(State state, int bar) {
    return state.facts().inLap(bar);
  }

  /** {@code lap 2}, {@code lap 2 of 3}, {@code ending}. */
  static String lap(State state, Outlook moment) {
    int bar = moment.position().bar();
    if (BarsAhead.isEnding(state, bar)) {
      return "ending";
    }
    String lap = "lap " + state.facts().form().lapOf(bar);
    OptionalInt last = state.band().lastBar();
    int length = state.facts().form().bars().size();
    return last.isPresent() ? lap + " of " + last.getAsInt() / length : lap;
  }

  private static List<String> words(State state, Outlook moment) {
    List<String> words = new ArrayList<>();
    int bars = moment.bar().section().bars().size();
    if (!state.countsIn()) {
      words.add("bar " + moment.bar().inSection() + " of " + bars + " beat " + moment.beat());
      words.add(lap(state, moment));
    }
    words.add(state.band().tempo() + " bpm");
    BandSettings band = state.band();
    band.loop()
        .ifPresent(
            loop ->
                words.add("loop " + inLap(state, loop.first()) + "-" + inLap(state, loop.last())));
    band.muted().stream().sorted().forEach(voice -> words.add("no " + voice.words()));
    if (band.keyShift() != 0) {
      words.add("keys " + (band.keyShift() > 0 ? "+" : "") + band.keyShift());
    }
    if (band.everyKey()) {
      words.add("all keys");
    }
    if (band.ramp()) {
      words.add("rising");
    }
    if (band.dropsOut()) {
      words.add("silent bars");
    }
    band.click().ifPresent(click -> words.add("click " + click));
    return words;
  }
}

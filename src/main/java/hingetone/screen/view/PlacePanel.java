package hingetone.screen.view;

import hingetone.chart.Form.Bar;
import hingetone.screen.BarsAhead;
import hingetone.screen.ChangeWords;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.sequencer.Command.Loop;
import hingetone.sequencer.Command.SilentBars;
import hingetone.sequencer.Status;
import hingetone.sequencer.Status.Motion;
import hingetone.text.DisplayWidth;
import java.util.ArrayList;
import java.util.List;

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
    if (state.motion() != Motion.PLAYING || state.countsIn()) {
      column = canvas.put(0, 0, " " + doing(state) + " ", Style.LIT) + 1;
    }
    if (state.heard().take().isPresent()) {
      column = canvas.put(0, column, " rec ", Style.of(Ink.WARNING).asReverse()) + 1;
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
    return switch (state.motion()) {
      case STARTING -> "starting";
      case STOPPED -> "stopped";
      case PAUSED -> "paused";
      case PLAYING -> state.countsIn() ? "count-in" : "playing";
    };
  }

  /** {@code loop 1-4} in this section, else {@code loop bar 7 to bar 2 of high}. */
  private static String loop(Loop loop, State state, Outlook moment) {
    Bar first = state.facts().form().bar(loop.firstBar());
    Bar last = state.facts().form().bar(loop.lastBar());
    boolean here = first.place() == moment.bar().place() && last.place() == first.place();
    return here
        ? "loop " + first.inSection() + "-" + last.inSection()
        : "loop " + moment.barName(loop.firstBar()) + " to " + moment.barName(loop.lastBar());
  }

  /** {@code lap 2}, {@code lap 2 of 3}, {@code ending}. */
  static String lap(State state, Outlook moment) {
    int bar = moment.position().bar();
    if (BarsAhead.isEnding(state, bar)) {
      return "ending";
    }
    String lap = "lap " + state.facts().form().lapOf(bar);
    return lap + state.status().end().map(end -> " of " + end.laps()).orElse("");
  }

  private static List<String> words(State state, Outlook moment) {
    List<String> words = new ArrayList<>();
    int bars = moment.bar().section().bars().size();
    if (!state.countsIn()) {
      words.add("bar " + moment.bar().inSection() + " of " + bars + " beat " + moment.beat());
      words.add(lap(state, moment));
    }
    Status band = state.status();
    words.add(band.tempo() + " bpm");
    band.loop().ifPresent(loop -> words.add(loop(loop, state, moment)));
    band.muted().stream().sorted().forEach(role -> words.add("no " + ChangeWords.name(role)));
    if (band.keyShift() != 0) {
      words.add("keys " + (band.keyShift() > 0 ? "+" : "") + band.keyShift());
    }
    if (band.keyWalk() != 0) {
      words.add("all keys");
    }
    state.facts().position().ifPresent(fret -> words.add("position " + fret));
    band.ramp().ifPresent(ramp -> words.add("tempo to " + ramp.goal()));
    if (band.dropsOut()) {
      SilentBars silent = band.silentBars();
      words.add("band " + silent.sounding() + " bars in, " + silent.silent() + " out");
    }
    if (band.metronome().on()) {
      words.add("metronome " + band.metronome().gap().clicked());
    }
    return words;
  }
}

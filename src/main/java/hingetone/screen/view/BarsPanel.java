package hingetone.screen.view;

import hingetone.chart.ChartBar.Slot;
import hingetone.chart.Form.Bar;
import hingetone.plan.Prompt;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;

/**
 * The bars ahead on one line in true proportion of time, and under them the turns.
 *
 * <p>The line stands still while a mark steps through its first half with the beat; then it moves
 * on by that half. So what comes is always in view, and nothing moves but the mark. A chord is
 * written where it changes; how long it holds is how long its space is.
 */
final class BarsPanel {
  private final Canvas canvas;
  private final State state;
  private final Outlook moment;
  private final Signs signs;
  private final BarRuler ruler;
  private final int current;
  private final int chordRow;

  private BarsPanel(Canvas canvas, State state, Outlook moment, int line) {
    this.canvas = canvas;
    this.state = state;
    this.moment = moment;
    this.signs = Signs.of(state);
    this.ruler = BarRuler.of(state, moment, canvas.columns(), line);
    this.current = line == 0 ? ruler.indexOf(moment.position().bar()) : -1;
    this.chordRow = canvas.rows() > 2 ? 1 : 0;
  }

  /**
   * Draws a line of bars, the one with the mark being line 0. Rows: flags, chords, beats, turns.
   */
  static void draw(Canvas canvas, State state, Outlook moment, int line) {
    if (canvas.rows() > 1) {
      new BarsPanel(canvas, state, moment, line).draw();
    }
  }

  private void draw() {
    for (int index = 0; index < ruler.size(); index++) {
      line(index);
      beats(index);
    }
    chords();
    if (chordRow > 0) {
      flags();
    }
    if (canvas.rows() > 3) {
      turns();
    }
  }

  private boolean isGone(int index) {
    return index < current;
  }

  private boolean crosses(int index) {
    return ruler.number(index) > 1
        && (index == 0 || ruler.number(index - 1) == ruler.number(index) - 1)
        && state.facts().crossingInto(ruler.number(index)).isPresent();
  }

  private void line(int index) {
    String plain =
        ruler.bar(index).isFirstOfSection() && ruler.number(index) > 0
            ? signs.sectionLine()
            : signs.barLine();
    boolean comes = crosses(index) && index > current;
    Style style = comes ? Style.of(Ink.COMES).asBold() : Style.QUIET;
    for (int row = chordRow; row < chordRow + 2; row++) {
      canvas.put(row, ruler.start(index), crosses(index) ? signs.crossingLine() : plain, style);
    }
  }

  private void beats(int index) {
    int beats = ruler.bar(index).meter().beatsPerBar();
    for (int beat = 1; beat <= beats; beat++) {
      int at = ruler.column(index, Beats.of(beat)) + (beat == 1 ? 1 : 0);
      if (index == current && beat == moment.beat()) {
        canvas.fill(chordRow + 1, ruler.start(index) + 1, at, signs.passed(), Style.PLAIN);
        canvas.put(chordRow + 1, at, signs.mark(), Style.LIT);
      } else if (index != current || beat > moment.beat()) {
        canvas.put(chordRow + 1, at, signs.beat(), isGone(index) ? Style.QUIET : Style.PLAIN);
      }
    }
  }

  /** A text that starts at a column and is cut where the next one starts. */
  private record Label(int column, String text, Style style) {}

  private void write(int row, List<Label> labels) {
    for (int i = 0; i < labels.size(); i++) {
      Label label = labels.get(i);
      int end = i + 1 < labels.size() ? labels.get(i + 1).column() - 1 : canvas.columns();
      String text = label.text();
      int room = Math.max(0, Math.min(text.length(), end - label.column()));
      canvas.put(row, label.column(), text.substring(0, room), label.style());
    }
  }

  private void chords() {
    List<Label> labels = new ArrayList<>();
    String last = "";
    for (int index = 0; index < ruler.size(); index++) {
      Bar bar = ruler.bar(index);
      last = bar.isFirstOfSection() ? "" : last;
      for (Slot slot : ruler.number(index) < 1 ? List.<Slot>of() : bar.chords().chords()) {
        boolean sounds = index == current && bar.slotAt(moment.position().beat()).equals(slot);
        if (!Outlook.name(slot).equals(last)) {
          last = Outlook.name(slot);
          Style style = isGone(index) ? Style.QUIET : Style.STRONG;
          int at = ruler.column(index, slot.beat()) + (slot.beat().equals(Beats.ONE) ? 1 : 0);
          labels.add(new Label(at, last, style));
        }
        if (sounds) {
          Label lit = labels.get(labels.size() - 1);
          labels.set(labels.size() - 1, new Label(lit.column(), lit.text(), Style.LIT));
        }
      }
    }
    write(chordRow, labels);
  }

  private void flags() {
    List<Label> labels = new ArrayList<>();
    for (int index = 0; index < ruler.size(); index++) {
      Bar bar = ruler.bar(index);
      int at = ruler.start(index) + 1;
      boolean follows = index > 0 && ruler.bar(index - 1).isFirstOfSection();
      if (ruler.number(index) < 1) {
        labels.add(new Label(at, "count-in", Style.QUIET));
      } else if (bar.isFirstOfSection()) {
        boolean comes = crosses(index) && index > current;
        Style style = comes ? Style.of(Ink.COMES).asBold() : Style.PLAIN;
        labels.add(new Label(at, bar.section().name() + "  " + bar.key(), style));
      } else if (state.facts().turnarounds().contains(bar.number())) {
        labels.add(new Label(at, "turnaround", Style.QUIET));
      } else if (!follows) {
        labels.add(new Label(at, Integer.toString(bar.inSection()), Style.QUIET));
      }
    }
    write(0, labels);
  }

  private void turns() {
    List<Label> labels = new ArrayList<>();
    int row = chordRow + 2;
    for (int index = 0; index < ruler.size(); index++) {
      int number = ruler.number(index);
      Position start = Position.of(number, 1);
      Position end = Position.of(number + 1, 1);
      for (Prompt turn : moment.turns(number)) {
        if (turn.speakFrom().compareTo(end) < 0 && turn.stopBy().compareTo(start) > 0) {
          stretch(row, index, turn);
          boolean lands = turn.landOn().bar() == number;
          boolean landed = index == 0 && turn.landOn().bar() < number;
          if (lands || landed) {
            int at = ruler.column(index, turn.landOn()) + (turn.isRest() ? 0 : 1);
            String words = turn.isRest() ? TurnWords.role(turn) : " " + TurnWords.role(turn) + " ";
            labels.add(new Label(at, words, style(turn, index)));
          }
        }
      }
    }
    write(row, labels);
  }

  private Style style(Prompt turn, int index) {
    Style own = TurnWords.isPlayers(turn) ? Style.of(Ink.TURN) : Style.PLAIN;
    boolean over = turn.stopBy().compareTo(moment.position()) <= 0;
    return over && isGone(index) || turn.isRest() ? Style.QUIET : own;
  }

  /** The part of a turn that lies in one bar: pickup, landing, what follows it. */
  private void stretch(int row, int index, Prompt turn) {
    if (turn.isRest()) {
      return;
    }
    int from = ruler.column(index, turn.speakFrom());
    int land = ruler.column(index, turn.landOn());
    int end = ruler.column(index, turn.stopBy());
    Style style = style(turn, index);
    canvas.fill(row, from, land, signs.pickup(), style);
    canvas.fill(
        row, land, end - (turn.stopBy().bar() > ruler.number(index) ? 0 : 1), signs.held(), style);
    if (turn.landOn().bar() == ruler.number(index)) {
      canvas.put(row, land, signs.landing(), style.asBold());
    }
  }
}

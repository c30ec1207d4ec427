package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.screen.picture.BigLetters;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Style;
import hingetone.screen.view.Outlook.Coming;
import java.util.List;

/**
 * For a player far from the screen: the chord now and the next as large as they go, the beat, and
 * what to land on when.
 */
final class FarPanel {
  /** From so many rows on the turn is told in block letters as well. */
  private static final int LEAST_FOR_TURN = 22;

  private static final int LEAST_FOR_LARGER = 34;

  private FarPanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    int rows = canvas.rows();
    int columns = canvas.columns();
    int top = rows >= 8 ? 1 : 0;
    int bottom = rows >= 10 ? 2 : rows >= 9 ? 1 : 0;
    int beats = rows >= 20 ? 2 : 1;
    if (rows < 8) {
      NowPanel.draw(canvas, state, moment, 0);
      return;
    }
    PlacePanel.draw(canvas.window(0, 0, top, columns), state, moment);
    int scale = rows < LEAST_FOR_TURN ? 0 : rows < LEAST_FOR_LARGER ? 1 : 2;
    int turn = BigLetters.height(scale, canvas.isAscii());
    int letters = rows - top - bottom - turn - beats - 1;
    int now = letters * 3 / 5;
    String chord = state.countsIn() ? Integer.toString(moment.beat()) : moment.chord();
    word(canvas.window(top, 0, now, columns), chord, Style.STRONG);
    NowPanel.beats(canvas.window(top + now, 0, beats, columns), state, moment);
    List<Coming> coming = moment.coming(1);
    if (!coming.isEmpty()) {
      Coming next = coming.get(0);
      int row = top + now + beats + 1;
      String count = Long.toString(moment.meter().toBeats(next.until()).ceil());
      int right = Math.min(columns / 4, BigLetters.width("00", 9));
      word(canvas.window(row, 0, letters - now, columns - right), next.chord(), Style.PLAIN);
      word(canvas.window(row, columns - right, letters - now, right), count, Style.STRONG);
    }
    TurnPanel.large(canvas.window(rows - bottom - turn, 0, turn, columns), state, moment);
    TurnPanel.draw(canvas.window(rows - bottom, 0, Math.min(1, bottom), columns), state, moment);
    CrossingPanel.draw(canvas.window(rows - 1, 0, bottom > 1 ? 1 : 0, columns), state, moment);
  }

  private static void word(Canvas canvas, String text, Style style) {
    int scale = BigLetters.scaleFor(text, canvas.rows(), canvas.columns(), canvas.isAscii());
    if (scale == 0) {
      canvas.put(Math.max(0, canvas.rows() - 1), 0, text, style.asBold());
    } else {
      BigLetters.draw(canvas, 0, 0, text, scale, style);
    }
  }
}

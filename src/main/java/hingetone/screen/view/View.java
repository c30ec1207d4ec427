package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.screen.State.Layer;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Frame;
import hingetone.screen.picture.Size;

/**
 * The picture of a state.
 *
 * <p>Time runs across the upper half, space lies below: the chord and the next one large, the bars
 * ahead on a line in true proportion of time with the turns under them, then what stays over the
 * next change of key, then the neck.
 */
public final class View {
  private View() {}

  /** The picture of a state on a screen of a size; never fails, whatever the size. */
  public static Frame render(State state, Size size) {
    Canvas canvas = Canvas.blank(size, state.terminal().ascii());
    if (size.rows() > 0 && size.columns() > 0) {
      if (state.layer() instanceof Layer.None) {
        picture(canvas, state);
        StatusPanel.words(canvas, state);
      } else {
        LayerPanel.draw(canvas, state);
      }
    }
    return canvas.frame(0, 0);
  }

  private static void picture(Canvas canvas, State state) {
    Outlook moment = new Outlook(state);
    if (state.settings().far()) {
      FarPanel.draw(canvas, state, moment);
      return;
    }
    Size size = new Size(canvas.rows(), canvas.columns());
    Layout layout = Layout.of(state, size);
    int row = 0;
    PlacePanel.draw(part(canvas, row, layout.place), state, moment);
    row += layout.place + layout.gap(0);
    NowPanel.draw(part(canvas, row, layout.now), state, moment, layout.scale);
    row += layout.now + layout.gap(1);
    for (int line = 0; line < layout.roadLines; line++) {
      BarsPanel.draw(part(canvas, row, layout.road), state, moment, line);
      row += layout.road + (line + 1 < layout.roadLines ? 1 : 0);
    }
    row += layout.gap(2);
    TurnPanel.draw(part(canvas, row, layout.turn), state, moment);
    row += layout.turn;
    CrossingPanel.draw(part(canvas, row, layout.crossing), state, moment);
    row += layout.crossing + layout.gap(3);
    ScalePanel.draw(part(canvas, row, layout.fit), state, moment);
    row += layout.fit;
    NeckPanel.draw(part(canvas, row, layout.neck + layout.legend), state, moment);
    StatusPanel.keys(part(canvas, canvas.rows() - layout.status, layout.status), state);
  }

  private static Canvas part(Canvas canvas, int row, int rows) {
    return canvas.window(row, 0, rows, canvas.columns());
  }
}

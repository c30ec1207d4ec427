package hingetone.screen.view;

import hingetone.screen.ChartFacts.Fit;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Style;

/**
 * The scale that fits now, its notes, the one on the neck where it stays another, and other
 * choices.
 */
final class ScalePanel {
  private ScalePanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    Fit fit = moment.fit();
    int column = canvas.put(0, 1, fit.scale(), Style.STRONG);
    column = canvas.put(0, column + 3, String.join(" ", fit.notes()), Style.PLAIN);
    if (!fit.neck().equals(fit.scale())) {
      column = canvas.put(0, column + 3, "on the neck " + fit.neck(), Style.QUIET);
    }
    if (!fit.also().isEmpty()) {
      canvas.put(0, column + 3, "or " + String.join(", ", fit.also()), Style.QUIET);
    }
  }
}

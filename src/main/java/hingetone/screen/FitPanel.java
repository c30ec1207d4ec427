package hingetone.screen;

import hingetone.screen.Facts.Fit;

/** The scale that fits now, its notes, and the other choices. */
final class FitPanel {
  private FitPanel() {}

  static void draw(Canvas canvas, State state, Moment moment) {
    Fit fit = moment.fit();
    int column = canvas.put(0, 1, fit.scale(), Style.STRONG);
    column = canvas.put(0, column + 3, String.join(" ", fit.notes()), Style.PLAIN);
    if (!fit.also().isEmpty()) {
      canvas.put(0, column + 3, "or " + String.join(", ", fit.also()), Style.QUIET);
    }
  }
}

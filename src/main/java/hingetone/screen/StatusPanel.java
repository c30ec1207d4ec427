package hingetone.screen;

/** The last row: what is wrong, else what was just told, else the keys one needs first. */
final class StatusPanel {
  private StatusPanel() {}

  static void draw(Canvas canvas, State state) {
    if (canvas.rows() == 0) {
      return;
    }
    if (state.fault().isPresent()) {
      String words = Signs.of(state).warning() + " " + state.fault().get();
      canvas.put(0, 1, words, Style.of(Ink.WARNING).asBold());
    } else if (!state.notice().isEmpty()) {
      canvas.put(0, 1, state.notice(), Style.PLAIN);
    } else {
      canvas.put(0, 1, "space pause   ? keys   tab menu   q leave", Style.QUIET);
    }
  }
}

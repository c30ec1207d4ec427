package hingetone.screen.view;

import hingetone.screen.ShownTurn;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.time.Beats;
import java.util.Optional;

/**
 * Whose turn it is: a line that is lit from edge to edge while the player speaks and dark while
 * others do, so that it can be read without reading.
 */
final class TurnPanel {
  private static final int COUNTED_BEATS = 8;

  private TurnPanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    if (canvas.rows() == 0) {
      return;
    }
    if (state.phase() == State.Phase.STOPPED) {
      canvas.put(0, 1, "space begins, with the count-in", Style.PLAIN);
      return;
    }
    Optional<ShownTurn> turn = moment.turn();
    Optional<ShownTurn> next = moment.nextTurn();
    if (turn.isPresent()) {
      on(canvas, turn.get(), state, moment);
    } else {
      next.ifPresent(t -> coming(canvas, 0, t, state, moment, Style.PLAIN));
    }
    if (canvas.rows() > 1 && turn.isPresent()) {
      next.ifPresent(t -> coming(canvas, 1, t, state, moment, Style.QUIET));
    }
  }

  private static void on(Canvas canvas, ShownTurn turn, State state, Outlook moment) {
    Style style =
        switch (turn.kind()) {
          case PLAYER -> Style.of(Ink.TURN).asBold().asReverse();
          case MACHINE -> Style.of(Ink.TURN).asBold();
          case NOBODY -> Style.STRONG;
        };
    Beats toLanding = moment.beatsUntil(turn.land());
    Beats toEnd = moment.beatsUntil(turn.end());
    String count =
        turn.kind() != ShownTurn.Kind.NOBODY && toLanding.isPositive()
            ? "land in " + Signs.of(state).count(toLanding)
            : "end in " + Signs.of(state).count(toEnd);
    canvas.fill(0, 0, canvas.columns(), " ", style);
    int column = canvas.put(0, 1, title(turn) + "   " + count, style);
    canvas.put(0, column, how(turn), style);
  }

  private static String title(ShownTurn turn) {
    return switch (turn.kind()) {
      case PLAYER -> "you: " + turn.words();
      case MACHINE -> "listen: " + turn.words();
      case NOBODY -> turn.words();
    };
  }

  private static String how(ShownTurn turn) {
    String again = turn.again().map(words -> "   again, " + words).orElse("");
    return again
        + turn.way().map(way -> "   " + CrossingPanel.word(way) + " into the next key").orElse("");
  }

  private static void coming(
      Canvas canvas, int row, ShownTurn turn, State state, Outlook moment, Style style) {
    String when =
        moment.isBehind(turn)
            ? " next"
            : " in " + Signs.of(state).count(moment.beatsUntil(turn.from()));
    int column = canvas.put(row, 1, title(turn) + when + lamps(turn, state, moment), style);
    String where =
        turn.kind() == ShownTurn.Kind.NOBODY
            ? ""
            : "   from beat "
                + turn.from().beat()
                + ", land on bar "
                + state.facts().inLap(turn.land().bar())
                + (turn.land().beat().equals(Beats.ONE) ? "" : " beat " + turn.land().beat());
    canvas.put(row, column, where + how(turn), Style.QUIET);
  }

  /** One lamp for each beat left, over the last beats before a turn of the player's. */
  private static String lamps(ShownTurn turn, State state, Outlook moment) {
    long left = moment.beatsUntil(turn.from()).ceil();
    boolean counted = turn.kind() == ShownTurn.Kind.PLAYER && left > 0 && left <= COUNTED_BEATS;
    return counted ? "  " + (Signs.of(state).lamp() + " ").repeat((int) left).strip() : "";
  }
}

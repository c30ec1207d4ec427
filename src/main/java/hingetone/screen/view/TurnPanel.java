package hingetone.screen.view;

import hingetone.plan.Prompt;
import hingetone.screen.State;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.sequencer.Status.Motion;
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
    if (state.motion() == Motion.STOPPED) {
      canvas.put(0, 1, "space begins, with the count-in", Style.PLAIN);
      return;
    }
    Optional<Prompt> turn = moment.turn();
    Optional<Prompt> next = moment.nextTurn();
    if (turn.isPresent()) {
      on(canvas, turn.get(), state, moment);
    } else {
      next.ifPresent(t -> coming(canvas, 0, t, state, moment, Style.PLAIN));
    }
    if (canvas.rows() > 1 && turn.isPresent()) {
      next.ifPresent(t -> coming(canvas, 1, t, state, moment, Style.QUIET));
    }
  }

  private static void on(Canvas canvas, Prompt turn, State state, Outlook moment) {
    Style spoken = Style.of(Ink.TURN).asBold();
    Style style =
        turn.isRest() ? Style.STRONG : TurnWords.isPlayers(turn) ? spoken.asReverse() : spoken;
    Beats toLanding = moment.beatsUntil(turn.landOn());
    Beats toEnd = moment.beatsUntil(turn.stopBy());
    String count =
        !turn.isRest() && toLanding.isPositive()
            ? "land in " + Signs.of(state).count(toLanding)
            : "end in " + Signs.of(state).count(toEnd);
    canvas.fill(0, 0, canvas.columns(), " ", style);
    int column = canvas.put(0, 1, TurnWords.title(turn) + "   " + count, style);
    canvas.put(0, column, how(turn), style);
  }

  private static String how(Prompt turn) {
    String again = TurnWords.again(turn).map(words -> "   " + words).orElse("");
    return again
        + turn.crossing()
            .map(way -> "   " + CrossingPanel.word(way) + " into the next key")
            .orElse("");
  }

  private static void coming(
      Canvas canvas, int row, Prompt turn, State state, Outlook moment, Style style) {
    String when =
        moment.isBehind(turn)
            ? " next"
            : " in " + Signs.of(state).count(moment.beatsUntil(turn.speakFrom()));
    int column =
        canvas.put(row, 1, TurnWords.title(turn) + when + lamps(turn, state, moment), style);
    String where =
        turn.isRest()
            ? ""
            : "   from beat "
                + turn.speakFrom().beat()
                + ", land on bar "
                + state.facts().inLap(turn.landOn().bar())
                + (turn.landOn().beat().equals(Beats.ONE) ? "" : " beat " + turn.landOn().beat());
    canvas.put(row, column, where + how(turn), Style.QUIET);
  }

  /** One lamp for each beat left, over the last beats before a turn of the player's. */
  private static String lamps(Prompt turn, State state, Outlook moment) {
    long left = moment.beatsUntil(turn.speakFrom()).ceil();
    boolean counted = TurnWords.isPlayers(turn) && left > 0 && left <= COUNTED_BEATS;
    return counted ? "  " + (Signs.of(state).lamp() + " ").repeat((int) left).strip() : "";
  }
}

package hingetone.screen.view;

import hingetone.plan.Prompt;
import hingetone.screen.State;
import hingetone.screen.picture.BigLetters;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Ink;
import hingetone.screen.picture.Style;
import hingetone.sequencer.Status.Motion;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;

/**
 * Whose turn it is: a line that is lit from edge to edge while the player speaks and dark while
 * others do, so that it can be read without reading.
 */
final class TurnPanel {
  private static final int COUNTED_BEATS = 8;

  /** What has room in block letters. */
  private static final int MOST_COUNTED = 99;

  private TurnPanel() {}

  static void draw(Canvas canvas, State state, Outlook moment) {
    if (canvas.rows() == 0) {
      return;
    }
    if (state.motion() == Motion.STARTING) {
      canvas.put(0, 1, "it begins by itself, with the count-in", Style.PLAIN);
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

  /**
   * The same in block letters, lit as the line is: what to land on, and the beats until then; after
   * the landing those to the end, before the turn those until it begins.
   */
  static void large(Canvas canvas, State state, Outlook moment) {
    Optional<Prompt> turn = moment.turn();
    if (canvas.rows() == 0 || state.motion() == Motion.STOPPED) {
      return;
    }
    Style style = turn.map(TurnPanel::style).orElse(Style.QUIET);
    if (turn.isPresent()) {
      for (int row = 0; row < canvas.rows(); row++) {
        canvas.fill(row, 0, canvas.columns(), " ", style);
      }
    }
    String note =
        turn.filter(t -> lands(t, moment)).stream()
            .flatMap(t -> moment.landing(t).stream())
            .findFirst()
            .orElse("");
    int scale = Math.max(1, canvas.rows() / BigLetters.height(1, canvas.isAscii()));
    BigLetters.draw(canvas, 0, 1, note, scale, style);
    String count = count(turn, moment).map(beats -> Long.toString(beats.ceil())).orElse("");
    int right = canvas.columns() - BigLetters.width(count, scale) - 1;
    BigLetters.draw(canvas, 0, right, count, scale, style);
  }

  private static Optional<Beats> count(Optional<Prompt> turn, Outlook moment) {
    return turn.map(t -> lands(t, moment) ? t.landOn() : t.stopBy())
        .or(() -> moment.nextTurn().filter(t -> !moment.isBehind(t)).map(Prompt::speakFrom))
        .map(moment::beatsUntil)
        .filter(beats -> beats.isPositive() && !beats.isAfter(Beats.of(MOST_COUNTED)));
  }

  private static boolean lands(Prompt turn, Outlook moment) {
    return !turn.isRest() && moment.beatsUntil(turn.landOn()).isPositive();
  }

  private static Style style(Prompt turn) {
    Style spoken = Style.of(Ink.TURN).asBold();
    return turn.isRest() ? Style.STRONG : TurnWords.isPlayers(turn) ? spoken.asReverse() : spoken;
  }

  private static void on(Canvas canvas, Prompt turn, State state, Outlook moment) {
    Style style = style(turn);
    Beats toLanding = moment.beatsUntil(turn.landOn());
    Beats toEnd = moment.beatsUntil(turn.stopBy());
    String count =
        lands(turn, moment)
            ? land(turn, toLanding, state, moment)
            : "end in " + beats(toEnd, state);
    canvas.fill(0, 0, canvas.columns(), " ", style);
    int column = canvas.put(0, 1, TurnWords.title(turn) + "   " + count, style);
    canvas.put(0, column, how(turn, moment, " into the next key"), style);
  }

  /** {@code land on A or C#, beat 1, in 2 beats}. */
  private static String land(Prompt turn, Beats until, State state, Outlook moment) {
    List<String> notes = moment.landing(turn);
    String on = notes.isEmpty() ? "" : " on " + String.join(" or ", notes);
    return "land" + on + ", " + turn.landOn().counted() + ", in " + beats(until, state);
  }

  private static String beats(Beats count, State state) {
    return Signs.of(state).count(count) + (count.isAfter(Beats.ONE) ? " beats" : " beat");
  }

  private static String how(Prompt turn, Outlook moment, String where) {
    String again = TurnWords.again(turn).map(words -> "   " + words).orElse("");
    return again
        + turn.crossing()
            .filter(way -> moment.isBeforeLine(turn))
            .map(way -> "   " + CrossingPanel.word(way) + where)
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
    boolean onLine = turn.landOn().beat().equals(Beats.ONE);
    String where =
        turn.isRest()
            ? ""
            : "   from "
                + turn.speakFrom().counted()
                + ", land on "
                + moment.barName(turn.landOn().bar())
                + (onLine ? "" : " " + turn.landOn().counted());
    canvas.put(row, column, where + how(turn, moment, " over"), Style.QUIET);
  }

  /** One lamp for each beat left, over the last beats before a turn of the player's. */
  private static String lamps(Prompt turn, State state, Outlook moment) {
    long left = moment.beatsUntil(turn.speakFrom()).ceil();
    boolean counted = TurnWords.isPlayers(turn) && left > 0 && left <= COUNTED_BEATS;
    return counted ? "  " + (Signs.of(state).lamp() + " ").repeat((int) left).strip() : "";
  }
}

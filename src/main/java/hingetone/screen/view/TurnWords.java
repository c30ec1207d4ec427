package hingetone.screen.view;

import hingetone.plan.Prompt;
import hingetone.plan.ReturnEnding;
import hingetone.plan.Speaker;
import hingetone.text.Choice;
import java.util.Optional;

/** A turn of the exchange in words. */
final class TurnWords {
  private TurnWords() {}

  /** What it is: {@code statement}, {@code reply}, {@code rest}. */
  static String role(Prompt turn) {
    return Choice.word(turn.role());
  }

  /** Whose it is and what: {@code you: statement}, {@code listen: reply}, {@code rest}. */
  static String title(Prompt turn) {
    return turn.isRest() ? role(turn) : (isPlayers(turn) ? "you: " : "listen: ") + role(turn);
  }

  /** How an earlier statement comes back; empty where none does. */
  static Optional<String> again(Prompt turn) {
    return turn.ending()
        .map(ending -> ending == ReturnEnding.SAME ? "again, same ending" : "again, new ending");
  }

  /** Whether the player speaks. */
  static boolean isPlayers(Prompt turn) {
    return !turn.isRest() && turn.by() == Speaker.PLAYER;
  }
}

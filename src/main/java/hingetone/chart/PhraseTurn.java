package hingetone.chart;

import hingetone.text.Choice;
import java.util.Locale;
import java.util.Optional;

/**
 * One turn in the exchange of phrases: {@code statement 2 again}.
 *
 * @param role who it is
 * @param bars its length in bars, at least 1
 * @param again whether the last statement's opening comes back, with another ending
 */
public record PhraseTurn(Role role, int bars, boolean again) {
  /** What a turn does. */
  public enum Role {
    STATEMENT,
    REPLY,
    REST;

    /** The role that a word names in either case; a question is a statement, an answer a reply. */
    static Optional<Role> named(String word) {
      return switch (word.toLowerCase(Locale.ROOT)) {
        case "question" -> Optional.of(STATEMENT);
        case "answer" -> Optional.of(REPLY);
        default -> Choice.named(values(), word);
      };
    }
  }

  public PhraseTurn {
    if (bars < 1) {
      throw new IllegalArgumentException("a phrase has at least one bar");
    }
  }
}

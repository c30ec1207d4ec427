package hingetone.chart;

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
    REST
  }

  public PhraseTurn {
    if (bars < 1) {
      throw new IllegalArgumentException("a phrase has at least one bar");
    }
  }
}

package hingetone.exchange;

import hingetone.chart.PhraseTurn.Role;

/** Which of the plan's phrases are played as examples. */
public enum Shown {
  ALL,
  /** The statements, so that the player may answer. */
  STATEMENTS,
  /** The phrases that go over a line into another key. */
  CROSSINGS;

  /** Whether a prompt's phrase is among them; a rest never is. */
  public boolean shows(Prompt prompt) {
    return switch (this) {
      case ALL -> !prompt.isRest();
      case STATEMENTS -> prompt.role() == Role.STATEMENT;
      case CROSSINGS -> prompt.crossing().isPresent();
    };
  }

  /** Whether every phrase of a role is among them. */
  public boolean showsAll(Role role) {
    return this == ALL || this == STATEMENTS && role == Role.STATEMENT;
  }

  /** For people: {@code the statements}. */
  public String words() {
    return switch (this) {
      case ALL -> "all phrases";
      case STATEMENTS -> "the statements";
      case CROSSINGS -> "the ways over the crossings";
    };
  }
}

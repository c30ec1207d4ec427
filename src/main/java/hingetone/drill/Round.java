package hingetone.drill;

/**
 * How a round went.
 *
 * @param score 0 to 1
 * @param words in a few words, for the player
 */
public record Round(double score, String words) {
  public Round {
    if (!(score >= 0 && score <= 1)) {
      throw new IllegalArgumentException("a score lies between 0 and 1: " + score);
    }
  }

  /** What a player's own grade says, 1 to 5. */
  public static Round graded(int grade) {
    return new Round((grade - 1) / 4.0, "graded " + grade);
  }
}

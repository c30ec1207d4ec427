package hingetone.review;

import hingetone.review.ReviewedPhrase.Role;

/**
 * A role chosen by its {@link RoleSigns}: multinomial logistic regression, its weights from the
 * tuning part of the labelled takes of {@code src/build/takes}.
 *
 * @param confidence the probability that the regression gives it
 */
record RoleChoice(Role role, double confidence) {
  /** One row a role, in the order of {@link Role}, one weight for each sign. */
  private static final double[][] WEIGHTS = {
    // W
    {
      1.29, -1.16, -1.17, -0.91, -0.16, -0.13, -0.03, -0.49, -0.01, 0.13, -0.59, 0.17, -0.55, 0.37,
      0.85, -0.91, 1.04, 1.08
    },
    {
      -0.80, 1.70, 1.10, 0.62, -0.99, -0.45, 0.00, -0.18, -0.21, 0.23, 1.04, -0.46, 0.57, -0.10,
      0.27, -1.16, 0.81, 0.65
    },
    {
      -0.50, -0.55, 0.08, 0.28, 1.16, 0.58, 0.02, 0.67, 0.22, -0.35, -0.46, 0.29, -0.02, -0.27,
      -1.11, 2.07, -1.84, -1.73
    }
    // E
  };

  /**
   * Chooses.
   *
   * @param signs the phrase's signs
   * @param asked whether there is a statement to answer
   */
  static RoleChoice of(double[] signs, boolean asked) {
    double[] odds = new double[WEIGHTS.length];
    double sum = 0;
    for (Role role : Role.values()) {
      boolean possible = asked || role != Role.REPLY;
      double value = 0;
      for (int k = 0; k < RoleSigns.COUNT; k++) {
        value += WEIGHTS[role.ordinal()][k] * signs[k];
      }
      odds[role.ordinal()] = possible ? Math.exp(value) : 0;
      sum += odds[role.ordinal()];
    }
    Role best = Role.STATEMENT;
    for (Role role : Role.values()) {
      best = odds[role.ordinal()] > odds[best.ordinal()] ? role : best;
    }
    return new RoleChoice(best, odds[best.ordinal()] / sum);
  }
}

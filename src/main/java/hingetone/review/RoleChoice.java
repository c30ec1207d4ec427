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
    {
      1.30, -1.16, -1.20, -0.94, -0.21, -0.23, -0.01, -0.46, 0.02, 0.14, -0.58, 0.16, -0.53, 0.28,
      0.91, -0.89, 1.05, 1.10
    },
    {
      -0.81, 1.71, 1.12, 0.63, -0.97, -0.43, -0.00, -0.19, -0.20, 0.23, 1.05, -0.46, 0.59, -0.23,
      0.10, -1.17, 0.81, 0.65
    },
    {
      -0.49, -0.55, 0.08, 0.32, 1.18, 0.66, 0.02, 0.65, 0.19, -0.37, -0.47, 0.30, -0.06, -0.05,
      -1.01, 2.06, -1.86, -1.74
    }
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

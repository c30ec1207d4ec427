package hingetone.text;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that a mistyped one was probably meant to be. */
public final class Suggestion {
  private static final int FARTHEST = 2;
  private static final int LONGEST = 60;

  private Suggestion() {}

  /**
   * The known word nearest to {@code word}, at most two edits away (insert, delete, replace, swap
   * of neighbours; case is free) and less than the whole word; empty when there is none. Of equally
   * near words the longer one, since letters are dropped more often than added.
   */
  public static Optional<String> nearest(String word, Collection<String> known) {
    if (word.isEmpty() || word.length() > LONGEST) {
      return Optional.empty();
    }
    String wanted = word.toLowerCase(Locale.ROOT);
    return known.stream()
        .filter(k -> Math.abs(k.length() - word.length()) <= FARTHEST)
        .filter(k -> distance(wanted, k) <= Math.min(FARTHEST, Math.max(1, k.length() / 2)))
        .min(
            Comparator.comparingInt((String k) -> distance(wanted, k))
                .thenComparingInt(k -> -k.length()));
  }

  private static int distance(String wanted, String known) {
    return edits(wanted, known.toLowerCase(Locale.ROOT));
  }

  /** Optimal string alignment distance. */
  static int edits(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        d[i][j] = i == 0 ? j : j == 0 ? i : step(d, a, b, i, j);
      }
    }
    return d[a.length()][b.length()];
  }

  private static int step(int[][] d, String a, String b, int i, int j) {
    int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
    int best = Math.min(replaced, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
    boolean swapped =
        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    return swapped ? Math.min(best, d[i - 2][j - 2] + 1) : best;
  }
}

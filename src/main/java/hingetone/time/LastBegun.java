package hingetone.time;

import java.util.function.IntPredicate;

/**
 * Finds the last of things in order of time that has begun, by halving.
 *
 * <pre>{@code
 * int[] starts = {0, 4, 8};
 * LastBegun.index(3, i -> starts[i] <= 5);    // → 1
 * LastBegun.index(3, i -> starts[i] <= -1);   // → -1
 * }</pre>
 */
public final class LastBegun {
  private LastBegun() {}

  /**
   * The index of the last that has begun, −1 where none has.
   *
   * @param count how many there are
   * @param begun whether one has begun; true up to some index and false after it
   */
  public static int index(int count, IntPredicate begun) {
    int low = -1;
    int high = count - 1;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (begun.test(middle)) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }
}

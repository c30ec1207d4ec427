package hingetone.sound;

/**
 * The smallest of the last values of a stream, or 1 where none of them is below 1. A value of 1 or
 * more costs next to nothing, others a constant time each.
 */
final class SlidingMinimum {
  private final float[] values;
  private final long[] places;
  private final int window;
  private final int mask;
  private long first;
  private long end;
  private long place;

  /** For the last {@code window} values. */
  SlidingMinimum(int window) {
    this.window = window;
    int size = Integer.highestOneBit(window) * 2;
    mask = size - 1;
    values = new float[size];
    places = new long[size];
  }

  /** Takes a value; gives the smallest of it, the values before it in the window, and 1. */
  float next(float value) {
    if (first < end && places[(int) first & mask] <= place - window) {
      first++;
    }
    if (value < 1) {
      while (first < end && values[(int) (end - 1) & mask] >= value) {
        end--;
      }
      values[(int) end & mask] = value;
      places[(int) end & mask] = place;
      end++;
    }
    place++;
    return first < end ? values[(int) first & mask] : 1;
  }
}

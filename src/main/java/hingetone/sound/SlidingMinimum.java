package hingetone.sound;

/** The smallest of the last values of a stream, at a constant cost for each value. */
final class SlidingMinimum {
  private final float[] values;
  private final long[] places;
  private final int window;
  private int first;
  private int size;
  private long place;

  /** For the last {@code window} values. */
  SlidingMinimum(int window) {
    this.window = window;
    values = new float[window];
    places = new long[window];
  }

  /** Takes a value; gives the smallest of it and the values before it in the window. */
  float next(float value) {
    while (size > 0 && places[first] <= place - window) {
      first = (first + 1) % window;
      size--;
    }
    while (size > 0 && values[(first + size - 1) % window] >= value) {
      size--;
    }
    int end = (first + size) % window;
    values[end] = value;
    places[end] = place++;
    size++;
    return values[first];
  }
}

package hingetone.chart;

/**
 * How fast a player gets, in notes a second. Common practice, from memory: eight picked ones are
 * sixteenths at 120 beats a minute.
 */
public enum Fluency {
  EASY(5, 8),
  NORMAL(8, 12),
  FAST(11, 16);

  private final int picked;
  private final int slurred;

  Fluency(int picked, int slurred) {
    this.picked = picked;
    this.slurred = slurred;
  }

  /** The most notes a second that are each picked. */
  public int picked() {
    return picked;
  }

  /** The most notes a second of a figure that is slid or slurred. */
  public int slurred() {
    return slurred;
  }
}

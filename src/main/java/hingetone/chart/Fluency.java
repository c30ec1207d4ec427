package hingetone.chart;

/**
 * How fast a player gets. Common practice, from memory: eight picked notes a second are sixteenths
 * at 120 beats a minute.
 */
public enum Fluency {
  EASY(5),
  NORMAL(8),
  FAST(11);

  private final int picked;

  Fluency(int picked) {
    this.picked = picked;
  }

  /** The most notes a second that are each picked. */
  public int picked() {
    return picked;
  }
}

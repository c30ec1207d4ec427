package hingetone.time;

/**
 * A place in the music: a bar and a beat in it. Bar 1 beat 1 is the start of the form; bars before
 * it (the count-in) are 0, −1, …, and bars count on through the laps.
 *
 * @param bar the bar
 * @param beat the beat in the bar's meter, 1 being the bar line; below one beat past its last
 */
public record Position(int bar, Beats beat) implements Comparable<Position> {
  public Position {
    if (beat.isBefore(Beats.ONE)) {
      throw new IllegalArgumentException("beats are counted from 1, not " + beat);
    }
  }

  public static Position of(int bar, long beat) {
    return new Position(bar, Beats.of(beat));
  }

  @Override
  public int compareTo(Position other) {
    return bar == other.bar ? beat.compareTo(other.beat) : Integer.compare(bar, other.bar);
  }

  /** For people: {@code bar 5 beat 2+1/2}. */
  @Override
  public String toString() {
    return "bar " + bar + " beat " + beat;
  }
}

package hingetone.time;

import java.util.List;

/**
 * A place in the music: a bar and a beat in it. Bar 1 beat 1 is the start of the form; bars before
 * it (the count-in) are 0, −1, …, and bars count on through the laps.
 *
 * @param bar the bar
 * @param beat the beat in the bar's meter, 1 being the bar line; below one beat past its last
 */
public record Position(int bar, Beats beat) implements Comparable<Position> {
  /** What players say for the quarters of a beat after its number; common practice. */
  private static final List<String> SYLLABLES = List.of("e", "&", "a");

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

  /**
   * The beat as players count it: {@code beat 3}, {@code the & of 3}, and in quarters of a beat
   * {@code the e of 3}, {@code the a of 3}; {@code beat 2+1/3} where no word is usual.
   */
  public String counted() {
    Beats part = beat.fraction();
    boolean named = 4 % part.denominator() == 0 && !part.isZero();
    String word = named ? SYLLABLES.get((int) (part.numerator() * 4 / part.denominator()) - 1) : "";
    return named ? "the " + word + " of " + beat.floor() : "beat " + beat;
  }

  /** For people: {@code bar 5 beat 2+1/2}. */
  @Override
  public String toString() {
    return "bar " + bar + " beat " + beat;
  }
}

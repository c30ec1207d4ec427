package hingetone.time;

import java.util.Arrays;
import java.util.Optional;

/**
 * The tempos that something is meant for, in counted notes a minute.
 *
 * @param slowest the slowest, not above the fastest
 */
public record TempoRange(int slowest, int fastest) {
  /** Every tempo there is. */
  public static final TempoRange ANY = new TempoRange(Tempo.SLOWEST, Tempo.FASTEST);

  /** Reads {@code 90-150}; empty where the text is no range of possible tempos. */
  public static Optional<TempoRange> parse(String text) {
    String[] ends = text.split("\\s*[-–]\\s*", -1);
    if (ends.length != 2 || !Arrays.stream(ends).allMatch(e -> e.matches("[0-9]{2,3}"))) {
      return Optional.empty();
    }
    return Optional.of(new TempoRange(Integer.parseInt(ends[0]), Integer.parseInt(ends[1])))
        .filter(
            r ->
                r.slowest >= Tempo.SLOWEST && r.slowest <= r.fastest && r.fastest <= Tempo.FASTEST);
  }
}

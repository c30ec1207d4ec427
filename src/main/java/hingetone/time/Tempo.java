package hingetone.time;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A tempo, exact, in counted notes a minute; {@link Meter#tempoNote()} says which note is counted.
 *
 * @param bpm counted notes a minute, {@value #SLOWEST} to {@value #FASTEST}
 */
public record Tempo(BigDecimal bpm) {
  public static final int SLOWEST = 20;
  public static final int FASTEST = 400;

  public Tempo {
    if (bpm.compareTo(BigDecimal.valueOf(SLOWEST)) < 0
        || bpm.compareTo(BigDecimal.valueOf(FASTEST)) > 0
        || bpm.scale() > 3) {
      throw new IllegalArgumentException("no such tempo: " + bpm);
    }
    bpm = bpm.stripTrailingZeros();
  }

  public static Tempo of(int bpm) {
    return new Tempo(BigDecimal.valueOf(bpm));
  }

  /** Reads a number of at most three decimals within the range; empty otherwise. */
  public static Optional<Tempo> parse(String text) {
    if (!text.matches("[0-9]{1,3}(\\.[0-9]{1,3})?")) {
      return Optional.empty();
    }
    BigDecimal value = new BigDecimal(text);
    boolean inRange =
        value.compareTo(BigDecimal.valueOf(SLOWEST)) >= 0
            && value.compareTo(BigDecimal.valueOf(FASTEST)) <= 0;
    return inRange ? Optional.of(new Tempo(value)) : Optional.empty();
  }

  /**
   * The tempo nearest to a number of at most three decimals: itself, the slowest or the fastest.
   */
  public static Tempo nearest(BigDecimal bpm) {
    return new Tempo(bpm.max(BigDecimal.valueOf(SLOWEST)).min(BigDecimal.valueOf(FASTEST)));
  }

  /** Quarter notes a minute in a meter, exact: 60 dotted quarters are 90 quarters. */
  public Beats quartersPerMinute(Meter meter) {
    return exact().times(meter.tempoNote());
  }

  private Beats exact() {
    return Beats.of(bpm.movePointRight(3).longValueExact(), 1000);
  }

  @Override
  public String toString() {
    return bpm.toPlainString();
  }
}

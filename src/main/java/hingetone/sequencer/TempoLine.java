package hingetone.sequencer;

import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Quarter notes played against the nanoseconds of the timeline: stretches of even tempo, each a
 * straight line. A time is rounded once, from the line's own start, so nothing adds up.
 *
 * <p>A change of tempo in mid-stretch turns the line about the present moment; a pause moves it.
 */
final class TempoLine {
  /**
   * A straight line through (anchor, nanos), valid from a place on.
   *
   * @param quarter nanoseconds a quarter note
   */
  private record Stretch(
      Beats from, Tempo charted, Meter meter, Beats anchor, double nanos, double quarter) {
    double at(Beats played) {
      return nanos + played.minus(anchor).toDouble() * quarter;
    }

    Stretch starting(double newNanos) {
      return new Stretch(from, charted, meter, anchor, newNanos, quarter);
    }
  }

  private final List<Stretch> stretches = new ArrayList<>();

  /** Starts anew: this place is played at this moment. */
  void start(Beats played, long nanos, Tempo charted, Meter meter, BigDecimal scale) {
    stretches.clear();
    stretches.add(line(played, nanos, charted, meter, scale));
  }

  /** From a place on, the chart asks for a tempo. */
  void enter(Beats from, Tempo charted, Meter meter, BigDecimal scale) {
    Stretch before = holding(from);
    double nanos = before.at(from);
    stretches.removeIf(s -> !s.from.isBefore(from));
    Stretch next = line(from, nanos, charted, meter, scale);
    boolean same = next.quarter == before.quarter;
    stretches.add(
        same ? new Stretch(from, charted, meter, before.anchor, before.nanos, next.quarter) : next);
  }

  /** Plays at another scale from a moment on. */
  void retune(long now, BigDecimal scale) {
    forgetBefore(now);
    Stretch old = stretches.get(0);
    Stretch turned = line(old.from, 0, old.charted, old.meter, scale);
    double nanos = now - (now - old.at(old.from)) * (turned.quarter / old.quarter);
    stretches.set(0, turned.starting(nanos));
    for (int i = 1; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      double start = stretches.get(i - 1).at(s.from);
      stretches.set(i, line(s.from, start, s.charted, s.meter, scale));
    }
  }

  /** Everything is played so much later. */
  void shift(long nanos) {
    stretches.replaceAll(s -> s.starting(s.nanos + nanos));
  }

  /** When a place is played. */
  long nanosAt(Beats played) {
    return Math.round(holding(played).at(played));
  }

  /** How long a quarter note lasts at a place, in nanoseconds. */
  double quarterAt(Beats played) {
    return holding(played).quarter;
  }

  /** Drops the stretches that are over at a moment. */
  void forgetBefore(long now) {
    while (stretches.size() > 1 && stretches.get(1).at(stretches.get(1).from) <= now) {
      stretches.remove(0);
    }
  }

  private Stretch holding(Beats played) {
    int i = stretches.size() - 1;
    while (i > 0 && stretches.get(i).from.isAfter(played)) {
      i--;
    }
    return stretches.get(i);
  }

  private static Stretch line(
      Beats from, double nanos, Tempo charted, Meter meter, BigDecimal scale) {
    double quarters = played(charted, scale).quartersPerMinute(meter).toDouble();
    return new Stretch(from, charted, meter, from, nanos, 60e9 / quarters);
  }

  /** The tempo that is played where the chart asks for another, within the possible. */
  static Tempo played(Tempo charted, BigDecimal scale) {
    return possible(charted.bpm().multiply(scale, MathContext.DECIMAL64));
  }

  /** How the chart's tempo must be scaled so that a tempo is played. */
  static BigDecimal scale(Tempo wanted, Tempo charted) {
    return wanted.bpm().divide(charted.bpm(), MathContext.DECIMAL64);
  }

  /** The nearest tempo that can be played. */
  static Tempo possible(BigDecimal bpm) {
    BigDecimal slowest = BigDecimal.valueOf(Tempo.SLOWEST);
    BigDecimal fastest = BigDecimal.valueOf(Tempo.FASTEST);
    return new Tempo(bpm.max(slowest).min(fastest).setScale(3, RoundingMode.HALF_EVEN));
  }
}

package hingetone.time;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exact length of musical time as a reduced fraction.
 *
 * <p>What one unit is, is said by whoever holds the value: scores count quarter notes, a {@link
 * Position} counts the beats of its bar. {@link Meter} converts between the two. All arithmetic is
 * exact and throws {@link ArithmeticException} on overflow.
 *
 * @param numerator of the reduced fraction, with the sign
 * @param denominator of the reduced fraction, always positive
 */
public record Beats(long numerator, long denominator) implements Comparable<Beats> {
  public static final Beats ZERO = new Beats(0, 1);
  public static final Beats ONE = new Beats(1, 1);

  private static final Pattern TEXT =
      Pattern.compile("(-?)(?:([0-9]{1,9})\\+)?([0-9]{1,9})(?:/([0-9]{1,9}))?");

  public Beats {
    if (denominator == 0) {
      throw new ArithmeticException("a fraction needs a denominator");
    }
    if (denominator != 1) {
      long divisor = gcd(abs(numerator), abs(denominator));
      divisor = denominator < 0 ? -divisor : divisor;
      numerator /= divisor;
      denominator /= divisor;
    }
  }

  public static Beats of(long whole) {
    return new Beats(whole, 1);
  }

  public static Beats of(long numerator, long denominator) {
    return new Beats(numerator, denominator);
  }

  /** Reads a whole text such as {@code 2}, {@code 3/2} or {@code 2+1/2}; empty otherwise. */
  public static Optional<Beats> parse(String text) {
    Matcher m = TEXT.matcher(text);
    if (!m.matches() || (m.group(2) != null && m.group(4) == null)) {
      return Optional.empty();
    }
    long denominator = m.group(4) == null ? 1 : Long.parseLong(m.group(4));
    if (denominator == 0) {
      return Optional.empty();
    }
    Beats value = of(Long.parseLong(m.group(3)), denominator);
    if (m.group(2) != null) {
      value = value.plus(of(Long.parseLong(m.group(2))));
    }
    return Optional.of(m.group(1).isEmpty() ? value : value.negated());
  }

  private static long abs(long value) {
    return value < 0 ? Math.negateExact(value) : value;
  }

  private static long gcd(long a, long b) {
    long larger = a;
    long smaller = b;
    while (smaller != 0) {
      long rest = larger % smaller;
      larger = smaller;
      smaller = rest;
    }
    return Math.max(larger, 1);
  }

  public Beats plus(Beats other) {
    if (denominator == other.denominator) {
      return new Beats(Math.addExact(numerator, other.numerator), denominator);
    }
    long divisor = gcd(denominator, other.denominator);
    long scale = other.denominator / divisor;
    return new Beats(
        Math.addExact(
            Math.multiplyExact(numerator, scale),
            Math.multiplyExact(other.numerator, denominator / divisor)),
        Math.multiplyExact(denominator, scale));
  }

  public Beats minus(Beats other) {
    return plus(other.negated());
  }

  public Beats times(Beats other) {
    long a = gcd(Math.abs(numerator), other.denominator);
    long b = gcd(Math.abs(other.numerator), denominator);
    return new Beats(
        Math.multiplyExact(numerator / a, other.numerator / b),
        Math.multiplyExact(denominator / b, other.denominator / a));
  }

  public Beats times(long factor) {
    return times(of(factor));
  }

  public Beats dividedBy(Beats other) {
    return times(new Beats(other.denominator, other.numerator));
  }

  public Beats dividedBy(long divisor) {
    return times(new Beats(1, divisor));
  }

  public Beats negated() {
    return new Beats(Math.negateExact(numerator), denominator);
  }

  /** The largest whole number not above this. */
  public long floor() {
    return Math.floorDiv(numerator, denominator);
  }

  /** The smallest whole number not below this. */
  public long ceil() {
    return -Math.floorDiv(-numerator, denominator);
  }

  /** What is left above {@link #floor()}: at least 0, below 1. */
  public Beats fraction() {
    return minus(of(floor()));
  }

  /** The remainder in a cycle: at least 0, below {@code cycle}. */
  public Beats modulo(Beats cycle) {
    return minus(cycle.times(dividedBy(cycle).floor()));
  }

  public boolean isZero() {
    return numerator == 0;
  }

  public boolean isPositive() {
    return numerator > 0;
  }

  public boolean isNegative() {
    return numerator < 0;
  }

  public boolean isBefore(Beats other) {
    return compareTo(other) < 0;
  }

  public boolean isAfter(Beats other) {
    return compareTo(other) > 0;
  }

  public Beats min(Beats other) {
    return isBefore(other) ? this : other;
  }

  public Beats max(Beats other) {
    return isAfter(other) ? this : other;
  }

  /** For drawing and statistics only; positions stay exact. */
  public double toDouble() {
    return (double) numerator / denominator;
  }

  /**
   * This many units as a whole number of smaller ones, rounded half up once: 1/3 quarter at 960
   * ticks a quarter is 320.
   */
  public long toUnits(long unitsEach) {
    long doubled = Math.multiplyExact(Math.multiplyExact(numerator, unitsEach), 2);
    return Math.floorDiv(Math.addExact(doubled, denominator), Math.multiplyExact(denominator, 2));
  }

  @Override
  public int compareTo(Beats other) {
    if (denominator == other.denominator) {
      return Long.compare(numerator, other.numerator);
    }
    return Long.compare(
        Math.multiplyExact(numerator, other.denominator),
        Math.multiplyExact(other.numerator, denominator));
  }

  /** As {@link #parse} reads it: {@code 2}, {@code 1/2}, {@code 2+1/2}, {@code -1/2}. */
  @Override
  public String toString() {
    if (isNegative()) {
      return "-" + negated();
    }
    if (denominator == 1) {
      return Long.toString(numerator);
    }
    String part = fraction().numerator + "/" + denominator;
    return floor() == 0 ? part : floor() + "+" + part;
  }
}

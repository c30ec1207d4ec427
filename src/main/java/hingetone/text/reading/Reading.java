package hingetone.text.reading;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What reading a text gave: a value, or the problems that kept it from being one, never both.
 *
 * @param value the value, when there was no problem
 * @param problems every problem found, in the order of the text; empty exactly when there is a
 *     value
 */
public record Reading<T>(Optional<T> value, List<Diagnostic> problems) {
  public Reading {
    problems = List.copyOf(problems);
    if (value.isPresent() != problems.isEmpty()) {
      throw new IllegalArgumentException("a reading is a value or problems");
    }
  }

  public static <T> Reading<T> of(T value) {
    return new Reading<>(Optional.of(value), List.of());
  }

  public static <T> Reading<T> failed(List<Diagnostic> problems) {
    return new Reading<>(Optional.empty(), problems);
  }

  /** The same reading with its value changed. */
  public <U> Reading<U> map(Function<T, U> change) {
    return new Reading<>(value.map(change), problems);
  }

  /** The reading that {@code next} makes of the value, or the problems that there are already. */
  public <U> Reading<U> then(Function<T, Reading<U>> next) {
    return value.map(next).orElseGet(() -> failed(problems));
  }
}

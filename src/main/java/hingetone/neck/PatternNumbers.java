package hingetone.neck;

import hingetone.theory.Interval;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The numbers 1 to 5 that guitarists give the shapes of a five-note scale, counted up the neck from
 * the one that starts on a certain degree (common practice; teachers differ in the degree).
 *
 * @param first the degrees that number 1 may start on; of these a scale takes the first that it has
 */
public record PatternNumbers(List<Interval> first) {
  /** Number 1 starts on the tonic. */
  public static final PatternNumbers FROM_THE_TONIC = new PatternNumbers(List.of(Interval.UNISON));

  private static final int FIVE = 5;

  public PatternNumbers {
    first = List.copyOf(first);
  }

  /** Reads degrees with spaces between them: {@code b3 6}; empty where one is none. */
  public static Optional<PatternNumbers> parse(String text) {
    List<Optional<Interval>> degrees =
        Arrays.stream(text.strip().split("\\s+")).map(Interval::parse).toList();
    return degrees.stream().allMatch(Optional::isPresent)
        ? Optional.of(new PatternNumbers(degrees.stream().flatMap(Optional::stream).toList()))
        : Optional.empty();
  }

  /** A shape's number; empty for scales that have not five notes. */
  public Optional<Integer> of(Shape shape) {
    List<Interval> degrees = shape.scale().type().intervals();
    if (degrees.size() != FIVE) {
      return Optional.empty();
    }
    int one = first.stream().filter(degrees::contains).findFirst().map(degrees::indexOf).orElse(0);
    return Optional.of(Math.floorMod(degrees.indexOf(shape.start()) - one, FIVE) + 1);
  }

  /** What a shape is called beside its scale: {@code from its b3 (pattern 2)}. */
  public String name(Shape shape) {
    return "from its " + shape.start() + of(shape).map(n -> " (pattern " + n + ")").orElse("");
  }
}

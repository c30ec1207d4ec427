package hingetone.review;

import hingetone.neck.Dot;
import hingetone.neck.Fretboard;
import hingetone.neck.PatternNumbers;
import hingetone.neck.Shape;
import hingetone.neck.Shapes;
import hingetone.neck.Spot;
import hingetone.theory.Interval;
import hingetone.theory.Scale;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Where a phrase lies on the neck.
 *
 * @param low its lowest fret
 * @param high its highest
 * @param pattern the number of the pentatonic shape that holds most of it, where one holds most
 * @param start the degree which that shape starts on
 * @param end which of its strings are used
 */
public record PhrasePlace(
    int low, int high, Optional<Integer> pattern, Optional<Interval> start, End end) {
  /** The strings on which a phrase lies. */
  public enum End {
    LOWER,
    UPPER,
    WHOLE
  }

  /** A shape is told where it holds so much of the phrase, and an end where it does; our own. */
  private static final double MOST = 0.7;

  /** The shapes of the keys, each worked out once. */
  static final class Finder {
    private final Fretboard neck;
    private final PatternNumbers numbers;
    private final Map<Scale, List<Shape>> shapes = new HashMap<>();

    Finder(Fretboard neck, PatternNumbers numbers) {
      this.neck = neck;
      this.numbers = numbers;
    }

    /** The place of a phrase in the pentatonic scale of a key; empty for one that has none. */
    Optional<PhrasePlace> of(List<Spot> spots, Scale pentatonic) {
      if (spots.isEmpty()) {
        return Optional.empty();
      }
      Optional<Shape> shape = shape(spots, pentatonic);
      return Optional.of(
          new PhrasePlace(
              spots.stream().mapToInt(Spot::fret).min().orElseThrow(),
              spots.stream().mapToInt(Spot::fret).max().orElseThrow(),
              shape.flatMap(numbers::of),
              shape.map(Shape::start),
              end(spots)));
    }

    private Optional<Shape> shape(List<Spot> spots, Scale pentatonic) {
      List<Shape> all =
          shapes.computeIfAbsent(pentatonic, s -> new ArrayList<>(Shapes.of(neck, s)));
      Optional<Shape> best = Optional.empty();
      long most = 0;
      for (Shape shape : all) {
        var dots = shape.dots().stream().map(Dot::spot).collect(Collectors.toSet());
        long held = spots.stream().filter(dots::contains).count();
        if (held > most) {
          most = held;
          best = Optional.of(shape);
        }
      }
      return most >= MOST * spots.size() ? best : Optional.empty();
    }

    private End end(List<Spot> spots) {
      long upper = spots.stream().filter(s -> s.string() <= neck.strings() / 2).count();
      boolean isUpper = upper >= MOST * spots.size();
      boolean isLower = spots.size() - upper >= MOST * spots.size();
      return isUpper ? End.UPPER : isLower ? End.LOWER : End.WHOLE;
    }
  }

  /** {@code frets 8 to 11, pattern 2 from its b3, upper strings}. */
  public String words() {
    String frets = low == high ? "fret " + low : "frets " + low + " to " + high;
    String shape =
        pattern.map(n -> ", pattern " + n).orElse("")
            + (pattern.isPresent() ? start.map(s -> " from its " + s).orElse("") : "");
    String strings =
        end == End.WHOLE ? "" : end == End.UPPER ? ", upper strings" : ", lower strings";
    return frets + shape + strings;
  }
}

package hingetone.review;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A take in figures, to be compared with another.
 *
 * @param notes how many notes
 * @param phrases how many phrases
 * @param timing how the strokes lie against the beat
 * @param landings how many phrases land
 * @param onPlace how many of them nearer than {@value LiveWords#ON_IT_MS} ms to their place
 * @param awayMs how far all of them are from it on average, early or late
 * @param ways how many changes of key were gone over in each way
 * @param returns how many phrases bring back an earlier one
 * @param sameEndings how many of these with the same ending
 */
public record TakeFigures(
    int notes,
    int phrases,
    Timing timing,
    int landings,
    int onPlace,
    double awayMs,
    Map<LineWay.Kind, Integer> ways,
    int returns,
    int sameEndings) {
  public TakeFigures {
    ways = Map.copyOf(ways);
  }

  /** The figures of a review. */
  public static TakeFigures of(Review review) {
    List<Double> away =
        review.phrases().stream()
            .flatMap(p -> p.landing().stream())
            .map(landing -> Math.abs(landing.offsetMs()))
            .toList();
    List<ReviewedPhrase.Return> returns =
        review.phrases().stream().flatMap(p -> p.returns().stream()).toList();
    Map<LineWay.Kind, Integer> ways = new EnumMap<>(LineWay.Kind.class);
    for (LineWay.Kind kind : LineWay.Kind.values()) {
      ways.put(kind, (int) review.lines().stream().filter(l -> l.way().kind() == kind).count());
    }
    return new TakeFigures(
        review.played().notes().size(),
        review.phrases().size(),
        review.timing(),
        away.size(),
        (int) away.stream().filter(ms -> ms <= LiveWords.ON_IT_MS).count(),
        away.stream().mapToDouble(ms -> ms).average().orElse(0),
        ways,
        returns.size(),
        (int) returns.stream().filter(ReviewedPhrase.Return::sameEnding).count());
  }
}

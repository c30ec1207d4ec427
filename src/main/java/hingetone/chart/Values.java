package hingetone.chart;

import hingetone.text.reading.WholeText;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.Arrays;
import java.util.Optional;

/** Reads the single values of a chart; each gives nothing where the text is no such value. */
final class Values {
  private Values() {}

  static Optional<Integer> swing(String text) {
    return WholeText.read(text, "%", 50, 75);
  }

  static Optional<Beats> pickup(String text) {
    return Beats.parse(text).filter(b -> !b.isNegative() && !b.isAfter(Beats.of(8)));
  }

  static Optional<Meter> grouping(String text, Meter meter) {
    if (!text.matches("[0-9]{1,2}(\\s*\\+\\s*[0-9]{1,2})*")) {
      return Optional.empty();
    }
    Integer[] groups =
        Arrays.stream(text.split("\\s*\\+\\s*")).map(Integer::valueOf).toArray(Integer[]::new);
    int sum = Arrays.stream(groups).mapToInt(g -> g).sum();
    boolean fits = sum == meter.beatsPerBar() && Arrays.stream(groups).allMatch(g -> g > 0);
    return fits ? Optional.of(meter.withGrouping(groups)) : Optional.empty();
  }

  /** A key whose tonic has at most one sharp or flat. */
  static Optional<Key> key(String text) {
    String tonic = text.split("\\s", 2)[0];
    return NoteName.prefixLength(tonic) <= 2
        ? Key.parse(text).filter(key -> Math.abs(key.tonic().alteration()) <= 1)
        : Optional.empty();
  }
}

package hingetone.groove;

import hingetone.time.Meter;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A pattern of one line: the bass's steps or the strokes of the chords.
 *
 * @param use when it is played
 * @param strip its signs
 */
public record LinePattern(PatternUse use, StepLine strip) implements Pattern {
  @Override
  public int length() {
    return strip.length();
  }

  @Override
  public int strokes(Meter meter) {
    String signs =
        IntStream.range(0, length())
            .mapToObj(i -> strip.signs(i, meter))
            .collect(Collectors.joining());
    return (int) signs.chars().filter(c -> c != StepLine.NOTHING && c != StepLine.HOLD).count()
        / length();
  }
}

package hingetone.groove;

import hingetone.score.Sound;
import java.util.List;
import java.util.Optional;

/**
 * The drummer.
 *
 * @param sound place in the mix
 * @param patterns what is played bar by bar
 * @param fills what is played into sections
 * @param crash the percussion key struck where a section starts; empty for none
 * @param stopPercent how often, in a hundred, the band stops after the first beat of the bar before
 *     a new key
 */
public record DrumStyle(
    Sound sound,
    List<DrumPattern> patterns,
    List<Fill> fills,
    Optional<Integer> crash,
    int stopPercent) {
  public DrumStyle {
    patterns = List.copyOf(patterns);
    fills = List.copyOf(fills);
  }
}

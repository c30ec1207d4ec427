package hingetone.groove;

import hingetone.score.Fullness;
import hingetone.time.Meter;
import java.util.Optional;

/**
 * When a pattern is played.
 *
 * @param weight how often beside the others, 1 or more
 * @param meter the meter it is drawn for; empty in a groove that has one meter or fits any
 * @param band the fullness it is meant for; empty for all
 */
public record PatternUse(int weight, Optional<Meter> meter, Optional<Fullness> band) {
  /** Whether it is meant for this fullness in particular. */
  public boolean isMeantFor(Fullness wanted) {
    return band.filter(wanted::equals).isPresent();
  }

  /** Whether it is drawn for a meter. */
  public boolean fits(Meter wanted) {
    return meter.isEmpty() || Groove.sameFigures(meter.get(), wanted);
  }
}

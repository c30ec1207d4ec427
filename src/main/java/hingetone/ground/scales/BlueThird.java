package hingetone.ground.scales;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.NoteName;
import hingetone.theory.Scale;
import java.util.Optional;

/** The minor third that a player curls up towards a chord's major one (common practice). */
public final class BlueThird {
  private BlueThird() {}

  /**
   * The minor third that a scale has in place of a chord's own major third; empty where none is.
   */
  public static Optional<NoteName> of(Chord chord, Scale scale) {
    NoteName major = chord.root().plus(Interval.MAJOR_THIRD);
    NoteName minor = chord.root().plus(Interval.MINOR_THIRD);
    boolean stands =
        chord.notes().contains(major) && !scale.contains(major) && scale.contains(minor);
    return stands ? Optional.of(minor) : Optional.empty();
  }
}

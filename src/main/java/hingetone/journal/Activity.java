package hingetone.journal;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What was done. */
public enum Activity {
  /** Free play over a chart. */
  PLAY,
  /** A take that was kept. */
  TAKE,
  LANDING,
  CROSSING,
  EXCHANGE,
  ENDINGS,
  OFFSET,
  OCTAVE,
  SILENCE,
  EAR;

  /** The activity with a name as the log writes it: {@code play}, {@code crossing}. */
  public static Optional<Activity> of(String name) {
    return Arrays.stream(values()).filter(one -> one.toString().equals(name)).findFirst();
  }

  /** Whether it is an exercise with rounds and a result. */
  public boolean isDrill() {
    return this != PLAY && this != TAKE;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}

package hingetone.transport;

import java.util.Optional;

/** The laps that are ready; asked by the timeline, which never waits. */
interface Laps {
  /** A lap, if it is ready. */
  Optional<Lap> lap(int number);

  /** Says that a lap is being played, so that the one after it is made and old ones may go. */
  void playing(int number);
}

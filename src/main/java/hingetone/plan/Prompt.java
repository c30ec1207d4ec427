package hingetone.plan;

import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.time.Position;
import java.util.Optional;

/**
 * One turn of a plan: who speaks, from when, where the main note lands and where to stop.
 *
 * <p>A rest has its first beat as {@code speakFrom} and {@code landOn}; it lasts until {@code
 * stopBy}.
 *
 * @param index its number, from 1, counted on through the laps
 * @param lap the lap its landing belongs to, from 1; its pickup may start in the lap before
 * @param section the section its landing belongs to
 * @param role what it does
 * @param by who plays it
 * @param repliesTo the index of the statement it answers; empty for all but replies
 * @param again the index of the earlier statement that comes back; empty where none does
 * @param ending what becomes of that statement's ending; present exactly when {@code again} is
 * @param speakFrom where it starts, its pickup included
 * @param landOn where its main note lands
 * @param stopBy where it has ended
 * @param crossing how it goes over the line into a new key; empty where it crosses none
 */
public record Prompt(
    int index,
    int lap,
    String section,
    Role role,
    Speaker by,
    Optional<Integer> repliesTo,
    Optional<Integer> again,
    Optional<ReturnEnding> ending,
    Position speakFrom,
    Position landOn,
    Position stopBy,
    Optional<Leave> crossing) {

  public Prompt {
    if (speakFrom.compareTo(landOn) > 0 || landOn.compareTo(stopBy) >= 0) {
      throw new IllegalArgumentException(
          "a phrase starts, lands, then stops: " + speakFrom + ", " + landOn + ", " + stopBy);
    }
  }

  public boolean isRest() {
    return role == Role.REST;
  }

  /** Whether a position lies in it: its start included, its end excluded. */
  public boolean covers(Position position) {
    return position.compareTo(speakFrom) >= 0 && position.compareTo(stopBy) < 0;
  }
}

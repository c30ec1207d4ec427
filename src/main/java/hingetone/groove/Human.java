package hingetone.groove;

import hingetone.score.Role;
import java.util.Map;

/**
 * How far from exact the players play.
 *
 * @param timingMillis how far a note may lie from its place, either way
 * @param touch how much a stroke's velocity may differ, either way
 * @param lateMillis how much later than the beat a lane is played by habit; negative where it
 *     pushes
 */
public record Human(int timingMillis, int touch, Map<Lane, Integer> lateMillis) {
  /** Exactly in place, every stroke as drawn. */
  public static final Human EXACT = new Human(0, 0, Map.of());

  /**
   * What has a habit of its own: the bass, the chord part, or one of the drums.
   *
   * @param role who plays it
   * @param drum its percussion key; 0 but for drums
   */
  public record Lane(Role role, int drum) {
    /** The lane that a note of a part belongs to. */
    public static Lane of(Role role, int key) {
      return new Lane(role, role == Role.DRUMS ? key : 0);
    }
  }

  public Human {
    lateMillis = Map.copyOf(lateMillis);
  }

  /** How late a lane is, in milliseconds; 0 where nothing is said. */
  public int late(Lane lane) {
    return lateMillis.getOrDefault(lane, 0);
  }
}

package hingetone.groove;

import java.util.Map;

/**
 * How far from exact the players play.
 *
 * @param timingMillis how far a note may lie from its place, either way
 * @param touch how much a stroke's velocity may differ, either way
 * @param lateMillis how much later than the beat a lane is played by habit; negative where it
 *     pushes. Keys are percussion keys, {@link #BASS} and {@link #CHORDS}
 */
public record Human(int timingMillis, int touch, Map<Integer, Integer> lateMillis) {
  /** The key of the bass in {@link #lateMillis}. */
  public static final int BASS = -1;

  /** The key of the chord part in {@link #lateMillis}. */
  public static final int CHORDS = -2;

  /** Exactly in place, every stroke as drawn. */
  public static final Human EXACT = new Human(0, 0, Map.of());

  public Human {
    lateMillis = Map.copyOf(lateMillis);
  }

  /** How late a lane is, in milliseconds; 0 where nothing is said. */
  public int late(int lane) {
    return lateMillis.getOrDefault(lane, 0);
  }
}

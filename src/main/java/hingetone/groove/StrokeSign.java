package hingetone.groove;

import java.util.HashMap;
import java.util.Map;

/** The signs that strike, and how hard. */
public final class StrokeSign {
  /** A ghost note: felt more than heard. */
  public static final char GHOST = 'g';

  /** An ordinary stroke. */
  public static final char PLAIN = 'x';

  /** An accent. */
  public static final char ACCENT = 'X';

  /**
   * MIDI velocity of each sign: {@code g} 34, {@code x} 88, {@code X} 116, and {@code 1} to {@code
   * 9} in even steps from 14 to 126.
   */
  public static final Map<Character, Integer> VELOCITIES = velocities();

  private StrokeSign() {}

  private static Map<Character, Integer> velocities() {
    Map<Character, Integer> velocities = new HashMap<>(Map.of(GHOST, 34, PLAIN, 88, ACCENT, 116));
    for (int digit = 1; digit <= 9; digit++) {
      velocities.put((char) ('0' + digit), 14 * digit);
    }
    return Map.copyOf(velocities);
  }
}

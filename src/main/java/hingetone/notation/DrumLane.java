package hingetone.notation;

import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jfugue.Rhythm;

/**
 * Drum lanes: one percussion instrument drawn with one sign a step, {@code X.g.x...}.
 *
 * <p>The signs are expanded by JFugue's {@code Rhythm}; every sign must have a meaning, since
 * {@code Rhythm} drops one it does not know and shifts all that follow.
 */
public final class DrumLane {
  /** A step in which nothing is struck. */
  public static final char NOTHING = '.';

  private static final int MOST_KEPT = 5000;

  /** Lanes come again bar after bar, and a parser of JFugue's is costly to make: each once. */
  private static final Map<Drawn, List<Note>> KEPT = new ConcurrentHashMap<>();

  private record Drawn(String signs, int key, Beats step, Map<Character, Integer> velocities) {}

  private DrumLane() {}

  /**
   * The strokes of a lane.
   *
   * @param signs one sign a step
   * @param key General MIDI percussion key, 0 to 127
   * @param step length of a step in quarter notes
   * @param velocities the signs that strike and how hard, 1 to 127
   * @return one note a stroke, a step long, onsets from 0
   * @throws IllegalArgumentException for a sign that is neither {@value #NOTHING} nor has a
   *     velocity
   */
  public static List<Note> strokes(
      String signs, int key, Beats step, Map<Character, Integer> velocities) {
    if (KEPT.size() > MOST_KEPT) {
      KEPT.clear();
    }
    return KEPT.computeIfAbsent(
        new Drawn(signs, key, step, Map.copyOf(velocities)), DrumLane::expanded);
  }

  private static List<Note> expanded(Drawn drawn) {
    String signs = drawn.signs();
    Map<Character, Integer> velocities = drawn.velocities();
    Rhythm rhythm = new Rhythm();
    rhythm.addSubstitution(NOTHING, "Rs");
    velocities.forEach(
        (sign, velocity) -> rhythm.addSubstitution(sign, stroke(drawn.key(), velocity)));
    for (char sign : signs.toCharArray()) {
      if (sign != NOTHING && !velocities.containsKey(sign)) {
        throw new IllegalArgumentException("a sign without a meaning: " + sign);
      }
    }
    rhythm.setLayer(1, signs);
    List<Note> sixteenths =
        NoteListener.parse(rhythm.getMusicString().replaceAll("[VL][0-9]+", "")).notes();
    Beats stretch = drawn.step().times(4);
    return sixteenths.stream()
        .map(n -> new Note(n.onset().times(stretch), drawn.step(), n.key(), n.velocity()))
        .toList();
  }

  private static String stroke(int key, int velocity) {
    return "[" + key + "]sa" + velocity;
  }
}

package hingetone.groove;

import hingetone.score.Sound;
import java.util.List;

/**
 * The player of the chords: rhythm, voicing and register.
 *
 * @param sound program and place in the mix
 * @param lowest the lowest MIDI key used
 * @param highest the highest, below the register where a lead plays
 * @param voicing how chords are built
 * @param voices how many notes each has, 2 to 5
 * @param keyTensions whether the ninth of the key may be added to chords that have none
 * @param soundingPercent how much of its drawn length a stroke sounds
 * @param strumMillis how long a stroke takes from its first string to its last; 0 for a keyboard
 * @param patterns what is played bar by bar
 */
public record ChordStyle(
    Sound sound,
    int lowest,
    int highest,
    Voicing voicing,
    int voices,
    boolean keyTensions,
    int soundingPercent,
    int strumMillis,
    List<LinePattern> patterns) {
  /** What a rhythm may be drawn with; {@code src/docs/grooves.md} says what each means. */
  public static final String SIGNS = "Xxgmsu-.";

  /** A muted stroke: short and without ring. */
  public static final char MUTED = 'm';

  /** An upstroke: the upper strings, from the top. */
  public static final char UP = 'u';

  /** A stroke with the sixth in the place of the fifth, as a boogie has it. */
  public static final char SIXTH = 's';

  /** How chords are built. */
  public enum Voicing {
    /** All notes within an octave, in any inversion. */
    CLOSE,
    /** Close, or with its second or third note from the top an octave down. */
    OPEN,
    /** Third and seventh first, and as little else as the voices allow. */
    SHELL,
    /** Root, fifth and octave. */
    POWER
  }

  public ChordStyle {
    patterns = List.copyOf(patterns);
  }
}

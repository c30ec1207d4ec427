package hingetone.groove;

import hingetone.score.Sound;
import java.util.List;

/**
 * The bass player: where each note falls and what it is to the chord; which pitch that becomes is
 * the arranger's business.
 *
 * @param sound program and place in the mix
 * @param lowest the lowest MIDI key used
 * @param highest the highest
 * @param soundingPercent how much of its drawn length a note sounds
 * @param rootOnChange whether every new chord gets its root (or slash bass) where it starts
 * @param leadIn where the last note before a chord leads into it
 * @param withKickPercent how many of the bass drum's strokes, of a hundred, the bass strikes with
 * @param patterns what is played bar by bar
 */
public record BassStyle(
    Sound sound,
    int lowest,
    int highest,
    int soundingPercent,
    boolean rootOnChange,
    LeadIn leadIn,
    int withKickPercent,
    List<LinePattern> patterns) {
  /** What a bass line may be drawn with; {@code src/docs/grooves.md} says what each means. */
  public static final String SIGNS = "12345678awbx-.";

  /** The root, or the slash bass. */
  public static final char ROOT = '1';

  /** The root an octave up. */
  public static final char OCTAVE = '8';

  /** A note that leads into the next one by a step or a fifth. */
  public static final char APPROACH = 'a';

  /** A step of a walking line. */
  public static final char WALK = 'w';

  /** A half step below the note that follows. */
  public static final char BELOW = 'b';

  /** A dead note: a short knock of the string. */
  public static final char DEAD = 'x';

  /** Where the last note before a chord becomes one that leads into it. */
  public enum LeadIn {
    /** Before every new chord. */
    CHANGES,
    /** Before every section. */
    SECTIONS,
    /** Nowhere: a riff stays as it is drawn. */
    NEVER
  }

  public BassStyle {
    patterns = List.copyOf(patterns);
  }
}

package hingetone.ground.scales;

/**
 * Every number of the scale choice and of the ways over a crossing, in one table. What each does,
 * and what it was set by, stands in {@code src/docs/ground.md}.
 */
public final class Weights {
  private Weights() {}

  /** The parts of a scale's fit; they add up to 1. */
  public static final double CHORD = 0.34;

  public static final double CLASH = 0.22;
  public static final double KEY = 0.22;
  public static final double TONIC = 0.14;
  public static final double EASE = 0.08;

  /** Added for the scale that handbooks name for what the chord does in its place. */
  static final double FUNCTION = 0.12;

  /** What each chord tone counts when a scale has it or lacks it. */
  static final double ROOT = 0.6;

  static final double THIRD = 1.6;
  static final double FIFTH = 0.3;
  static final double ALTERED_FIFTH = 1;
  static final double SEVENTH = 1;
  static final double TENSION = 0.6;

  /** A bass that is none of the chord's own notes: a line that walks down, a pedal. */
  static final double BASS = 1;

  /**
   * What a blue third counts for the major third of the chord that it is curled towards: over a
   * minor or blues tonic, and all through a blues, in full.
   */
  static final double BLUE_THIRD_OF_TONIC = 1;

  /** In a minor tonic's scale over another chord, where it is the seventh of the key. */
  static final double BLUE_SEVENTH = 0.8;

  /** In a scale on the chord's own root where the section stands on a riff. */
  static final double BLUE_THIRD_OVER_RIFF = 0.6;

  /** In a scale on the root of a chord that has both thirds itself; in any other scale. */
  static final double BLUE_THIRD_IN_CHORD = 0.4;

  static final double BLUE_THIRD = 0.1;

  /**
   * What a blues key's own scale, or over a riff the minor tonic's, counts for the chord tones that
   * it lacks.
   */
  static final double BLUES_STANDS = 0.7;

  /** How much a note rubs a semitone above a chord tone, and a semitone below one. */
  static final double ABOVE = 1;

  static final double BELOW = 0.15;

  /**
   * What is left of a rub over a dominant seventh, of one by a note of the key's own scale that no
   * neighbouring chord contradicts, and of one by a blue note.
   */
  static final double OVER_DOMINANT = 0.4;

  static final double KEYS_OWN = 0.6;

  static final double BLUE_NOTE = 0.5;

  /** How many fully rubbing notes, or notes foreign to the key, are as bad as can be. */
  static final double UNBEARABLE = 2;

  /** How far a neighbouring chord's note counts as the key's. */
  static final double NEIGHBOUR = 0.5;

  /** How far an altered tension counts as the key's once the chord's symbol has another. */
  static final double ALTERED_TOO = 0.8;

  /** What the chord's root counts as a scale's tonic, a home's tonic counting 1. */
  static final double CHORD_ROOT = 0.75;

  /** How strongly a chord is heard in each home, before they are made to add up to 1. */
  static final double OWN_KEY = 1;

  static final double RESOLUTION = 1;
  static final double TRITONE_RESOLUTION = 0.5;
  static final double PREPARING = 1;
  static final double BORROWED = 0.6;
  static final double LEADING_ON = 0.8;
  static final double RIFF = 1;

  /** What each fifth that a scale spans beyond a pentatonic's four takes from its ease. */
  static final double FIFTH_SPANNED = 0.05;

  /** What is left of the ease of a scale that few practise. */
  static final double RARE = 0.3;

  /** Scales below this fit are not offered, nor more than this many. */
  static final double OFFERED = 0.6;

  static final int MOST_OFFERED = 8;

  /**
   * What a change of the neck's shape inside a key costs, in bars times fit, and what a scale that
   * is not offered over a chord is taken to fit.
   */
  public static final double NECK_CHANGES = 0.15;

  public static final double NOT_OFFERED = 0.5;

  /** The route over the neck, in millimetres of travel: a wide stretch, a too wide one. */
  public static final double WIDE_STRETCH = 15;

  public static final double TOO_WIDE_STRETCH = 80;

  /** Where the hand is at ease on most necks, and what each fret away from there costs. */
  public static final int COMFORTABLE_FRET = 8;

  public static final double AWAY = 1;

  /** What each fret costs that a shape begins away from the position a player stays in. */
  public static final double OUT_OF_POSITION = 60;

  /** The parts of a held note's score; they add up to 1. The side after the line counts more. */
  public static final double DEGREE_BEFORE = 0.15;

  public static final double DEGREE_AFTER = 0.25;
  public static final double CHORD_BEFORE = 0.2;
  public static final double CHORD_AFTER = 0.4;

  /** A degree that is not of the tonic's chord, and one that is not in the pentatonic either. */
  public static final double IN_PENTATONIC = 0.7;

  public static final double IN_SCALE = 0.4;

  /** A note that is not of the chord and does not fight it. */
  public static final double COLOUR = 0.6;

  /** What is left of the score of a common tone that only the seven-note scales share. */
  public static final double OUTSIDE_PENTATONIC = 0.8;

  /** What is left of the score of a note that has to move a half tone on the line. */
  public static final double MOVED = 0.9;

  /** Holds offered at most. */
  public static final int MOST_HOLDS = 12;

  /** What makes a run good: landing on the new chord, starting on the old one. */
  public static final double LANDS_ON_CHORD = 1;

  public static final double STARTS_ON_CHORD = 0.4;

  /**
   * Moving as far as the old scale must to become the new one, where that is three frets or less.
   */
  public static final double AS_THE_KEY_MOVES = 0.6;

  /** Lying on the highest string. */
  public static final double HIGH_STRINGS = 0.5;

  /** Each fret of the way, off. */
  public static final double FRET_WALKED = 0.15;

  /** Landing on the new tonic. */
  public static final double LANDS_ON_TONIC = 0.3;
}

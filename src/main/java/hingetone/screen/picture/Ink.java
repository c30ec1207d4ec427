package hingetone.screen.picture;

/** What a colour means. A second sign, a shape or a word, always means the same. */
public enum Ink {
  /** The terminal's own foreground. */
  PLAIN,
  /** A note that survives the crossing. */
  STAYS,
  /** What belongs to the key to come. */
  COMES,
  /** The player's turn. */
  TURN,
  /** Something is wrong. */
  WARNING
}

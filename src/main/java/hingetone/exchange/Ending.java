package hingetone.exchange;

/** What becomes of a statement's ending when the statement comes back. */
public enum Ending {
  SAME,
  DIFFERENT
}

package hingetone.plan;

/** What becomes of a statement's ending when the statement comes back. */
public enum ReturnEnding {
  SAME,
  DIFFERENT
}

package hingetone.exchange;

/** Where the off-beats of a statement belong. */
public enum Feel {
  STRAIGHT,
  SWUNG,
  /** It does as well either way. */
  EITHER;

  /** Whether a statement of this feel goes over a band that swings, or does not. */
  boolean fits(boolean swings) {
    return this == EITHER || (this == SWUNG) == swings;
  }
}

package hingetone.phrase;

/** Where the off-beats of a statement belong. */
public enum OffBeats {
  STRAIGHT,
  SWUNG,
  /** It does as well either way. */
  EITHER;

  /** Whether a statement of this feel goes over a band that swings, or does not. */
  public boolean fits(boolean swings) {
    return this == EITHER || (this == SWUNG) == swings;
  }
}

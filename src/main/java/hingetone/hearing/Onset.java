package hingetone.hearing;

/**
 * The beginning of a note.
 *
 * @param frame its frame
 * @param kind how it begins
 * @param certainty how sure it is, 0 to 1
 */
record Onset(long frame, Kind kind, double certainty) {
  /** How a note begins; the order is that of the trained judge's classes after "not at all". */
  enum Kind {
    PICKED,
    LEGATO,
    SLIDE
  }
}

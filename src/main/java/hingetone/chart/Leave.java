package hingetone.chart;

/** How a section's last bars go over to the next key. */
public enum Leave {
  /** Busily: more notes, a figure walked fret by fret. */
  RUN,
  /** On one hinge tone left ringing. */
  HOLD,
  /** As the player likes. */
  EITHER
}

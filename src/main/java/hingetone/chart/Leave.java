package hingetone.chart;

/** How the last bars before another key go over to it. */
public enum Leave {
  /** Busily: more notes, a figure walked fret by fret. */
  RUN,
  /** On one hinge tone left ringing. */
  HOLD,
  /** As the player likes: only a chart says so, a plan has chosen. */
  EITHER
}

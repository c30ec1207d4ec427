package hingetone.plan;

/** A way over a crossing. */
public enum Way {
  /** Busily: more notes, a figure walked fret by fret into the new key. */
  RUN,
  /** On one hinge tone left ringing over the line. */
  HOLD
}

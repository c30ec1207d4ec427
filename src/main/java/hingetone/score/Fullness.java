package hingetone.score;

/** How full a band plays: what a chart asks for, and what a pattern of a groove is meant for. */
public enum Fullness {
  LIGHT,
  NORMAL,
  FULL
}

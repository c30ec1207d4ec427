package hingetone.groove;

/** How full the band plays where a pattern is meant for it. */
public enum Thickness {
  LIGHT,
  NORMAL,
  FULL
}

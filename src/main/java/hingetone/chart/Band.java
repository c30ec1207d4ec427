package hingetone.chart;

/** How full the band plays. */
public enum Band {
  LIGHT,
  NORMAL,
  FULL
}

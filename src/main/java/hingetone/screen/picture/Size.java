package hingetone.screen.picture;

/**
 * The size of a terminal in character cells; sizes no terminal has are brought into range.
 *
 * @param rows 0 to {@value #MOST_ROWS}
 * @param columns 0 to {@value #MOST_COLUMNS}
 */
public record Size(int rows, int columns) {
  public static final int MOST_ROWS = 500;
  public static final int MOST_COLUMNS = 1000;

  public Size {
    rows = Math.min(Math.max(rows, 0), MOST_ROWS);
    columns = Math.min(Math.max(columns, 0), MOST_COLUMNS);
  }
}

package hingetone.screen.picture;

import hingetone.text.DisplayWidth;
import hingetone.text.Printable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A sheet of character cells that panels draw on, and a window on a part of it. Whatever does not
 * fit in the window is cut, so that a panel never has to ask.
 */
public final class Canvas {
  /** The right half of a wide character. */
  private static final int CONTINUED = -1;

  private static final int UNKNOWN = '?';

  /** The whole sheet, which all windows on it write to. */
  private record Sheet(int[] cells, Style[] styles, Size size, boolean ascii) {
    int columns() {
      return size.columns();
    }
  }

  private final Sheet sheet;
  private final int top;
  private final int left;
  private final Size window;

  private Canvas(Sheet sheet, int top, int left, Size window) {
    this.sheet = sheet;
    this.top = top;
    this.left = left;
    this.window = window;
  }

  /** A blank sheet; on an ASCII one every other character becomes a question mark. */
  public static Canvas blank(Size size, boolean ascii) {
    int[] cells = new int[size.rows() * size.columns()];
    Arrays.fill(cells, ' ');
    Style[] styles = new Style[cells.length];
    Arrays.fill(styles, Style.PLAIN);
    return new Canvas(new Sheet(cells, styles, size, ascii), 0, 0, size);
  }

  /** A window on a part of this one, cut to it. */
  public Canvas window(int row, int column, int rows, int columns) {
    int height = Math.min(rows, window.rows() - row);
    int width = Math.min(columns, window.columns() - column);
    return new Canvas(sheet, top + row, left + column, new Size(height, width));
  }

  public int rows() {
    return window.rows();
  }

  public int columns() {
    return window.columns();
  }

  public boolean isAscii() {
    return sheet.ascii;
  }

  /** Writes a text from a cell on; gives the column after it. Marks without width are left out. */
  public int put(int row, int column, String text, Style style) {
    int at = column;
    for (int c : Printable.line(text).codePoints().toArray()) {
      int width = DisplayWidth.of(Character.toString(c));
      if (width > 0) {
        set(row, at, width, c, style);
        at += width;
      }
    }
    return at;
  }

  /** Fills a stretch of a row with one character. */
  public void fill(int row, int from, int to, String sign, Style style) {
    for (int column = Math.max(from, 0); column < Math.min(to, columns()); column++) {
      put(row, column, sign, style);
    }
  }

  private void set(int row, int column, int width, int character, Style style) {
    if (row < 0 || row >= rows() || column < 0 || column >= columns()) {
      return;
    }
    boolean cut = column + width > columns();
    int index = (top + row) * sheet.columns() + left + column;
    write(index, cut ? ' ' : sheet.ascii && character > '~' ? UNKNOWN : character, style);
    if (width == 2 && !cut) {
      write(index + 1, sheet.ascii ? UNKNOWN : CONTINUED, style);
    }
  }

  private void write(int index, int character, Style style) {
    if (sheet.cells[index] == CONTINUED && character != CONTINUED) {
      sheet.cells[index - 1] = ' ';
    }
    boolean leavesHalf = index + 1 < sheet.cells.length && sheet.cells[index + 1] == CONTINUED;
    if (leavesHalf && (index + 1) % sheet.columns() != 0) {
      sheet.cells[index + 1] = ' ';
    }
    sheet.cells[index] = character;
    sheet.styles[index] = style;
  }

  /** The finished picture. */
  public Frame frame(int cursorRow, int cursorColumn) {
    List<Frame.Line> lines = new ArrayList<>(sheet.size.rows());
    for (int row = 0; row < sheet.size.rows(); row++) {
      lines.add(new Frame.Line(spans(row)));
    }
    return new Frame(lines, cursorRow, cursorColumn);
  }

  private List<Frame.Span> spans(int row) {
    List<Frame.Span> spans = new ArrayList<>();
    int end = (row + 1) * sheet.columns();
    int from = row * sheet.columns();
    while (from < end) {
      int to = from;
      StringBuilder text = new StringBuilder();
      while (to < end && sheet.styles[to].equals(sheet.styles[from])) {
        if (sheet.cells[to] != CONTINUED) {
          text.appendCodePoint(sheet.cells[to]);
        }
        to++;
      }
      spans.add(new Frame.Span(text.toString(), sheet.styles[from]));
      from = to;
    }
    return spans;
  }
}

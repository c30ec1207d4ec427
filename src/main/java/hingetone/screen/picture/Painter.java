package hingetone.screen.picture;

import hingetone.text.DisplayWidth;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns pictures into what is sent to a terminal: only what differs from the picture before,
 * wrapped so that a terminal with synchronised updates shows it at once.
 *
 * <p>Needs nothing but ECMA-48 cursor moves and colours.
 */
public final class Painter {
  private static final String BEGIN = "\033[?2026h\033[?7l";
  private static final String END = "\033[0m\033[?7h\033[?2026l";

  /** Unchanged cells that are cheaper sent again than jumped over. */
  private static final int CHEAP_GAP = 8;

  private final TerminalLook look;
  private List<Frame.Line> shown = List.of();

  public Painter(TerminalLook look) {
    this.look = look;
  }

  /** Forgets what is shown, so that the next picture is sent whole. */
  public void forget() {
    shown = List.of();
  }

  /** What to send so that a picture is shown; empty where it already is. */
  public String paint(Frame frame) {
    List<Frame.Line> lines = frame.lines();
    boolean anew = shown.size() != lines.size() || width(shown) != width(lines);
    StringBuilder out = new StringBuilder(anew ? "\033[0m\033[2J" : "");
    for (int row = 0; row < lines.size(); row++) {
      if (anew || !lines.get(row).equals(shown.get(row))) {
        List<Cell> before = anew ? List.of() : cells(shown.get(row));
        line(out, row, before, cells(lines.get(row)));
      }
    }
    shown = lines;
    return out.isEmpty() ? "" : BEGIN + out + move(frame.cursorRow(), frame.cursorColumn()) + END;
  }

  private static int width(List<Frame.Line> lines) {
    return lines.isEmpty() ? 0 : DisplayWidth.of(lines.get(0).text());
  }

  /** A cell; the right half of a wide character has an empty text. */
  private record Cell(String text, Style style) {
    static final Cell BLANK = new Cell(" ", Style.PLAIN);
  }

  private static List<Cell> cells(Frame.Line line) {
    List<Cell> cells = new ArrayList<>();
    for (Frame.Span span : line.spans()) {
      span.text()
          .codePoints()
          .forEach(
              c -> {
                String text = Character.toString(c);
                cells.add(new Cell(text, span.style()));
                if (DisplayWidth.of(text) == 2) {
                  cells.add(new Cell("", span.style()));
                }
              });
    }
    return cells;
  }

  private void line(StringBuilder out, int row, List<Cell> before, List<Cell> after) {
    int column = 0;
    while (column < after.size()) {
      if (same(before, after, column)) {
        column++;
        continue;
      }
      int from = after.get(column).text().isEmpty() ? column - 1 : column;
      int end = column + 1;
      for (int i = end; i < after.size() && i - end <= CHEAP_GAP; i++) {
        end = same(before, after, i) ? end : i + 1;
      }
      out.append(move(row, from));
      write(out, after.subList(from, end));
      column = end;
    }
  }

  private static boolean same(List<Cell> before, List<Cell> after, int column) {
    Cell old = column < before.size() ? before.get(column) : Cell.BLANK;
    return old.equals(after.get(column));
  }

  private void write(StringBuilder out, List<Cell> cells) {
    Style style = null;
    for (Cell cell : cells) {
      if (!cell.style().equals(style)) {
        style = cell.style();
        out.append(look.sequence(style));
      }
      out.append(cell.text());
    }
  }

  private static String move(int row, int column) {
    return "\033[" + (row + 1) + ";" + (column + 1) + "H";
  }
}

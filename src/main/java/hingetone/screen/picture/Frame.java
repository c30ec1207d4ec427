package hingetone.screen.picture;

import java.util.List;
import java.util.stream.Collectors;

/**
 * One picture of the screen.
 *
 * @param lines its rows from the top, each as wide as the screen
 * @param cursorRow the row of the (hidden) cursor, which magnifiers and braille displays follow
 * @param cursorColumn the column of that cursor
 */
public record Frame(List<Line> lines, int cursorRow, int cursorColumn) {
  /**
   * A row.
   *
   * @param spans texts of one style each, from the left
   */
  public record Line(List<Span> spans) {
    public Line {
      spans = List.copyOf(spans);
    }

    /** The row without its styles. */
    public String text() {
      return spans.stream().map(Span::text).collect(Collectors.joining());
    }
  }

  /** A text in one style. */
  public record Span(String text, Style style) {}

  public Frame {
    lines = List.copyOf(lines);
  }

  /** The picture without its styles, trailing blanks cut, one line a row. */
  public String text() {
    return lines.stream()
        .map(line -> line.text().stripTrailing() + "\n")
        .collect(Collectors.joining());
  }
}

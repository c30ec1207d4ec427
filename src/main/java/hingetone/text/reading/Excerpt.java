package hingetone.text.reading;

import hingetone.text.DisplayWidth;
import hingetone.text.Printable;

/**
 * The line of a source around a place, made fit to print, with the carets that go under it.
 *
 * <p>It goes through the gate ({@link Printable}), and a long line is cut to a window around the
 * place, its cut ends marked {@code …}. Carets are placed by display width.
 *
 * @param text the line as printed
 * @param carets spaces and carets to print under it
 */
record Excerpt(String text, String carets) {
  private static final int WIDEST = 100;
  private static final int BEFORE = 40;

  static Excerpt of(Source source, Span span) {
    int lineNumber = source.lineOf(span.start());
    int lineStart = source.offsetOfLine(lineNumber);
    String line = source.line(lineNumber);
    int from = Math.min(span.start() - lineStart, line.length());
    int to = Math.max(from, Math.min(span.end() - lineStart, line.length()));
    int cutStart = line.length() > WIDEST ? Math.max(0, from - BEFORE) : 0;
    int cutEnd = Math.min(line.length(), cutStart + WIDEST);
    to = Math.min(to, cutEnd);
    String before = Printable.line(line.substring(cutStart, from));
    String marked = Printable.line(line.substring(from, to));
    String after = Printable.line(line.substring(to, cutEnd));
    String head = cutStart > 0 ? "…" : "";
    String tail = cutEnd < line.length() ? "…" : "";
    int indent = DisplayWidth.of(head + before);
    int width = Math.max(1, DisplayWidth.of(marked));
    return new Excerpt(
        (head + before + marked + after + tail).stripTrailing(),
        " ".repeat(indent) + "^".repeat(width));
  }
}

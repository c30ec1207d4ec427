package hingetone.text.reading;

import java.util.Arrays;
import java.util.stream.IntStream;

/** A named text that was read, with its lines, so that a place in it can be shown. */
public final class Source {
  private final String name;
  private final String text;
  private final int[] lineStarts;

  /**
   * A text under the name people call it by.
   *
   * @param name a file name, or {@code standard input}
   * @param text the whole text
   */
  public Source(String name, String text) {
    this.name = name;
    this.text = text;
    this.lineStarts = lineStarts(text);
  }

  private static int[] lineStarts(String text) {
    return IntStream.concat(
            IntStream.of(0),
            IntStream.range(0, text.length()).filter(i -> text.charAt(i) == '\n').map(i -> i + 1))
        .toArray();
  }

  /** What people call it. */
  public String name() {
    return name;
  }

  /** The whole text. */
  public String text() {
    return text;
  }

  /** The text of a span. */
  public String text(Span span) {
    return text.substring(span.start(), span.end());
  }

  /** The 1-based line that holds an offset (0 to the text's length, in UTF-16 units). */
  public int lineOf(int offset) {
    int found = Arrays.binarySearch(lineStarts, offset);
    return found >= 0 ? found + 1 : -found - 1;
  }

  /** The 1-based column of an offset, counted in characters as people see them (code points). */
  public int columnOf(int offset) {
    return text.codePointCount(offsetOfLine(lineOf(offset)), offset) + 1;
  }

  /** How many lines it has, at least 1. */
  public int lineCount() {
    return lineStarts.length;
  }

  /** A line's text, without its line break; empty past the end. */
  public String line(int number) {
    return text(spanOfLine(number));
  }

  /** Where a line stands, without its line break; at the end of the text past the last line. */
  public Span spanOfLine(int number) {
    int start = offsetOfLine(number);
    int end = number < lineCount() ? offsetOfLine(number + 1) - 1 : text.length();
    boolean carriageReturn = end > start && text.charAt(end - 1) == '\r';
    return new Span(start, carriageReturn ? end - 1 : end);
  }

  /** The offset at which a 1-based line starts; the text's end past the last line. */
  public int offsetOfLine(int number) {
    return number > lineStarts.length ? text.length() : lineStarts[Math.max(number, 1) - 1];
  }

  @Override
  public String toString() {
    return name;
  }
}

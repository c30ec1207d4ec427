package hingetone.text.reading;

/**
 * A stretch of a source text: its start included, its end excluded, in UTF-16 units.
 *
 * @param start offset of its first character
 * @param end offset after its last character
 */
public record Span(int start, int end) {
  public Span {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException("no such span: " + start + " to " + end);
    }
  }

  /** A part of this span: {@code from} and {@code to} count from its start. */
  public Span part(int from, int to) {
    return new Span(start + from, start + to);
  }

  public int length() {
    return end - start;
  }
}

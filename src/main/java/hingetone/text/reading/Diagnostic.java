package hingetone.text.reading;

import hingetone.text.Printable;
import java.util.Optional;

/**
 * One problem in a text: where it is, what is wrong, what was expected, and a suggestion.
 *
 * @param source the text
 * @param span the place in it
 * @param message what is wrong, one line, no full stop: {@code unknown chord quality "mj7"}
 * @param expected what was being read and what would be right, whole sentences
 * @param suggestion what the writer may have meant: {@code Dmaj7}
 */
public record Diagnostic(
    Source source, Span span, String message, String expected, Optional<String> suggestion) {

  private static final int WIDEST = 96;

  /** A problem without a suggestion. */
  public static Diagnostic of(Source source, Span span, String message, String expected) {
    return new Diagnostic(source, span, message, expected, Optional.empty());
  }

  /** The 1-based line of its start. */
  public int line() {
    return source.lineOf(span.start());
  }

  /** The 1-based column of its start, in code points. */
  public int column() {
    return source.columnOf(span.start());
  }

  /**
   * The report for people, fit for a terminal, lines ended by {@code \n}; of an empty text only its
   * name, no place:
   *
   * <pre>
   * harbour.yaml:12:16: unknown chord quality "mj7"
   *    |
   * 12 |     | Cm7 | Fmj7 | Cm7 | G7b9 |
   *    |              ^^^
   * I was reading a chord and expected a quality such as maj7, m7 or 7.
   * Did you mean Fmaj7?
   * </pre>
   */
  public String report() {
    StringBuilder out = new StringBuilder(Printable.line(source.name()));
    if (source.text().isEmpty()) {
      out.append(": ").append(Printable.line(message)).append('\n');
    } else {
      out.append(':').append(line()).append(':').append(column());
      out.append(": ").append(Printable.line(message)).append('\n').append(excerpt());
    }
    if (!expected.isEmpty()) {
      expected.lines().forEach(line -> out.append(wrapped(line)).append('\n'));
    }
    suggestion.ifPresent(s -> out.append("Did you mean ").append(Printable.line(s)).append("?\n"));
    return Printable.text(out.toString());
  }

  /** A line broken at spaces; an indented one, which is an example, stays whole. */
  private static String wrapped(String line) {
    return line.startsWith(" ")
        ? line
        : line.replaceAll("(.{1," + WIDEST + "})(?: |$)", "$1\n").strip();
  }

  private String excerpt() {
    String number = Integer.toString(line());
    String gutter = " ".repeat(number.length());
    Excerpt excerpt = Excerpt.of(source, span);
    return String.join(
        "\n",
        gutter + " |",
        number + " | " + excerpt.text(),
        gutter + " | " + excerpt.carets() + "\n");
  }
}

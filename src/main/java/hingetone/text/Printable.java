package hingetone.text;

/**
 * The gate for everything that is printed or written. A character that a terminal would obey, or
 * that would hide or reorder what stands around it, comes out as {@code ·}, one column wide.
 *
 * <p>Such are the controls C0, DEL and C1 (ECMA-48), the format characters (Unicode's category Cf,
 * among them the bidirectional controls of Unicode Standard Annex 9) but for the two joiners that
 * words are written with, the line and paragraph separators, and what is no character at all.
 */
public final class Printable {
  private static final int SIGN = '·';
  private static final int NON_JOINER = 0x200C;
  private static final int JOINER = 0x200D;

  private Printable() {}

  /** A text of several lines: its line breaks stay, a tab becomes a space. */
  public static String text(String text) {
    return through(text.replace("\r\n", "\n"), true);
  }

  /** A text that stands in one line: a line break in it is a control like others. */
  public static String line(String text) {
    return through(text, false);
  }

  private static String through(String text, boolean lines) {
    StringBuilder out = new StringBuilder(text.length());
    for (int at = 0; at < text.length(); at += Character.charCount(text.codePointAt(at))) {
      int c = text.codePointAt(at);
      boolean passes = isPrintable(c) || lines && c == '\n';
      out.appendCodePoint(c == '\t' ? ' ' : passes ? c : SIGN);
    }
    return out.toString();
  }

  /** Whether a code point passes the gate as it is. */
  public static boolean isPrintable(int c) {
    if (c >= ' ' && c <= '~' || c == NON_JOINER || c == JOINER) {
      return true;
    }
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          false;
      default -> true;
    };
  }
}

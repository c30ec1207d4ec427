package hingetone.text;

/**
 * How many terminal columns a text takes behind the gate ({@link Printable}): two for wide East
 * Asian characters, none for marks.
 */
public final class DisplayWidth {
  private DisplayWidth() {}

  /** Columns that {@code text} takes on a terminal. */
  public static int of(String text) {
    return text.codePoints().map(DisplayWidth::ofCharacter).sum();
  }

  private static int ofCharacter(int c) {
    if (!Printable.isPrintable(c)) {
      return 1;
    }
    int type = Character.getType(c);
    boolean mark =
        type == Character.NON_SPACING_MARK
            || type == Character.ENCLOSING_MARK
            || type == Character.FORMAT;
    return mark ? 0 : isWide(c) ? 2 : 1;
  }

  /** The wide ranges of Unicode Standard Annex 11, whole blocks. */
  private static boolean isWide(int c) {
    return (c >= 0x1100 && c <= 0x115F)
        || (c >= 0x2E80 && c <= 0xA4CF && c != 0x303F)
        || (c >= 0xAC00 && c <= 0xD7A3)
        || (c >= 0xF900 && c <= 0xFAFF)
        || (c >= 0xFE30 && c <= 0xFE6F)
        || (c >= 0xFF00 && c <= 0xFF60)
        || (c >= 0xFFE0 && c <= 0xFFE6)
        || (c >= 0x1F300 && c <= 0x1F64F)
        || (c >= 0x1F680 && c <= 0x1F6C5)
        || (c >= 0x1F900 && c <= 0x1F9FF)
        || (c >= 0x20000 && c <= 0x3FFFD);
  }
}

package hingetone.screen.picture;

/**
 * How a text looks.
 *
 * @param ink its colour, by meaning
 * @param bold heavy
 * @param faint held back
 * @param reverse foreground and background exchanged
 */
public record Style(Ink ink, boolean bold, boolean faint, boolean reverse) {
  public static final Style PLAIN = of(Ink.PLAIN);
  public static final Style QUIET = PLAIN.asFaint();
  public static final Style STRONG = PLAIN.asBold();
  public static final Style LIT = new Style(Ink.PLAIN, true, false, true);

  public static Style of(Ink ink) {
    return new Style(ink, false, false, false);
  }

  public Style asBold() {
    return new Style(ink, true, false, reverse);
  }

  public Style asFaint() {
    return new Style(ink, false, true, reverse);
  }

  public Style asReverse() {
    return new Style(ink, bold, false, true);
  }
}

package hingetone.print;

/** How a piece of text stands out where there is colour; it never means anything by itself. */
public enum Ink {
  PLAIN(""),
  FAINT("2"),
  STRONG("1"),
  CHORD("1;36"),
  COMMON("33");

  private final String code;

  Ink(String code) {
    this.code = code;
  }

  /** A text in this ink for a terminal (select graphic rendition, ECMA-48). */
  String onTerminal(String text) {
    return this == PLAIN ? text : "\u001b[" + code + "m" + text + "\u001b[0m";
  }
}

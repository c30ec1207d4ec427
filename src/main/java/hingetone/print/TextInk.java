package hingetone.print;

import hingetone.text.Printable;

/** How a piece of text stands out where there is colour; it never means anything by itself. */
public enum TextInk {
  PLAIN(""),
  FAINT("2"),
  STRONG("1"),
  CHORD("1;36"),
  COMMON("33");

  private final String code;

  TextInk(String code) {
    this.code = code;
  }

  /** A text that has passed the gate, in this ink for a terminal (ECMA-48's SGR). */
  String onTerminal(String text) {
    String shown = Printable.line(text);
    return this == PLAIN ? shown : "\u001b[" + code + "m" + shown + "\u001b[0m";
  }
}

package hingetone.screen.view;

import hingetone.screen.State;
import hingetone.time.Beats;

/** The signs of the picture, in Unicode or in plain ASCII. Each meaning has a shape of its own. */
record Signs(
    String barLine,
    String sectionLine,
    String crossingLine,
    String beat,
    String passed,
    String ahead,
    String mark,
    String pickup,
    String landing,
    String held,
    String lamp,
    String stays,
    String to,
    String half,
    String warning) {
  private static final Signs UNICODE =
      new Signs("│", "┃", "█", "·", "━", "─", "▲", "╌", "▼", "━", "●", "◆", "→", "½", "!");

  private static final Signs ASCII =
      new Signs("|", "I", "#", ".", "=", "-", "^", "-", "V", "=", "@", "X", "->", ".5", "!");

  static Signs of(State state) {
    return state.terminal().ascii() ? ASCII : UNICODE;
  }

  /** A count for people: {@code 3}, {@code 2½}, other fractions rounded up. */
  String count(Beats beats) {
    Beats twice = beats.times(2);
    if (twice.denominator() != 1 || beats.denominator() == 1) {
      return Long.toString(beats.ceil());
    }
    boolean belowOne = beats.floor() == 0 && !half.startsWith(".");
    return (belowOne ? "" : Long.toString(beats.floor())) + half;
  }
}

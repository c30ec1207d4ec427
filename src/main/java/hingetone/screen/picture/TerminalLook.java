package hingetone.screen.picture;

import hingetone.text.OutputCharset;
import java.util.Locale;
import java.util.Map;

/**
 * What a terminal can show, as its environment says.
 *
 * <p>Colours are chosen so that each has a contrast of at least 4 : 1 (WCAG 2.1) against black and
 * against white, and hues that the common kinds of colour blindness keep apart: blue, orange-brown.
 *
 * @param depth how many colours
 * @param ascii whether only ASCII can be shown
 */
public record TerminalLook(Depth depth, boolean ascii) {
  /** How many colours. */
  public enum Depth {
    NONE,
    SIXTEEN,
    MANY,
    TRUE
  }

  /**
   * Reads {@code NO_COLOR}, {@code COLORTERM}, {@code TERM} and the locale.
   *
   * @param system the name of the operating system, as Java has it
   */
  public static TerminalLook of(Map<String, String> environment, String system) {
    return new TerminalLook(
        depth(environment, system), !OutputCharset.isUnicode(OutputCharset.of(environment)));
  }

  private static Depth depth(Map<String, String> environment, String system) {
    String term = environment.getOrDefault("TERM", "");
    String colorterm = environment.getOrDefault("COLORTERM", "");
    if (!environment.getOrDefault("NO_COLOR", "").isEmpty() || isPlain(environment, system)) {
      return Depth.NONE;
    }
    boolean console = isWindows(system) && term.isEmpty();
    if (console
        || colorterm.equals("truecolor")
        || colorterm.equals("24bit")
        || term.endsWith("-direct")) {
      return Depth.TRUE;
    }
    return term.contains("256color") ? Depth.MANY : Depth.SIXTEEN;
  }

  /**
   * Whether the terminal can do no more than print lines. Windows does not set {@code TERM}: its
   * console takes these control sequences and 24-bit colours since Windows 10 (Microsoft, Console
   * Virtual Terminal Sequences).
   *
   * @param system the name of the operating system, as Java has it
   */
  public static boolean isPlain(Map<String, String> environment, String system) {
    String term = environment.getOrDefault("TERM", "");
    return term.isEmpty() && !isWindows(system)
        || term.startsWith("dumb")
        || term.equals("unknown");
  }

  private static boolean isWindows(String system) {
    return system.toLowerCase(Locale.ROOT).startsWith("windows");
  }

  /** The colour of an ink as {@code 0xRRGGBB}; −1 for the terminal's own. */
  static int rgb(Ink ink) {
    return switch (ink) {
      case PLAIN -> -1;
      case STAYS -> 0x3277D4;
      case COMES -> 0xB86614;
      case TURN -> 0x12866A;
      case WARNING -> 0xC8487F;
    };
  }

  /** The colour of an ink in the 256-colour table; −1 for the terminal's own. */
  static int index(Ink ink) {
    return switch (ink) {
      case PLAIN -> -1;
      case STAYS -> 63;
      case COMES -> 130;
      case TURN -> 29;
      case WARNING -> 162;
    };
  }

  /** The control sequence (ECMA-48 SGR) that switches to a style. */
  public String sequence(Style style) {
    StringBuilder codes = new StringBuilder("\033[0");
    codes.append(style.bold() ? ";1" : "");
    codes.append(style.faint() ? ";2" : "");
    codes.append(style.reverse() ? ";7" : "");
    return codes.append(colour(style.ink())).append('m').toString();
  }

  private String colour(Ink ink) {
    if (ink == Ink.PLAIN || depth == Depth.NONE) {
      return "";
    }
    int rgb = rgb(ink);
    return switch (depth) {
      case TRUE -> ";38;2;" + (rgb >> 16) + ";" + (rgb >> 8 & 255) + ";" + (rgb & 255);
      case MANY -> ";38;5;" + index(ink);
      default -> sixteen(ink);
    };
  }

  /** Of the sixteen only those that can be read on black and on white; the turn needs none. */
  private static String sixteen(Ink ink) {
    return switch (ink) {
      case STAYS -> ";94";
      case COMES -> ";35";
      case WARNING -> ";31";
      default -> "";
    };
  }
}

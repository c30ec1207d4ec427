package hingetone.text.reading;

import java.util.Optional;

/** Reads a whole number with its unit, if any, behind it: {@code 6 ms}. */
public final class WholeText {
  private WholeText() {}

  /**
   * The number; empty where the text is none or it lies outside.
   *
   * @param unit may be left out in the text; empty for a bare number
   */
  public static Optional<Integer> read(String text, String unit, int least, int most) {
    boolean united = !unit.isEmpty() && text.endsWith(unit);
    String number = united ? text.substring(0, text.length() - unit.length()).strip() : text;
    return number.matches("-?[0-9]{1,4}")
        ? Optional.of(Integer.parseInt(number)).filter(n -> n >= least && n <= most)
        : Optional.empty();
  }
}

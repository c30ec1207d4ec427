package hingetone.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a whole number within a range, or says which numbers are possible. */
abstract class WholeNumber implements ITypeConverter<Integer> {
  private final int lowest;
  private final int highest;
  private final String unit;

  /**
   * For an option.
   *
   * @param unit what is counted, for the message
   */
  WholeNumber(int lowest, int highest, String unit) {
    this.lowest = lowest;
    this.highest = highest;
    this.unit = unit;
  }

  @Override
  public final Integer convert(String text) {
    return read(text, lowest, highest, unit);
  }

  /** A whole number within a range, or a message that says the range. */
  static int read(String text, int lowest, int highest, String unit) {
    if (text.matches("[-+−]?[0-9]{1,9}")) {
      int value = Integer.parseInt(text.replace('−', '-'));
      if (value >= lowest && value <= highest) {
        return value;
      }
    }
    throw new TypeConversionException(
        "\""
            + text
            + "\" is not possible: I expected "
            + unit
            + " from "
            + lowest
            + " to "
            + highest);
  }
}

package hingetone.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a decimal number, negative too, or says what was expected. */
abstract class DecimalNumber implements ITypeConverter<Double> {
  private final String what;
  private final String expected;

  /**
   * For an option.
   *
   * @param what what the number is, for the message
   * @param expected what to write instead, for the message
   */
  DecimalNumber(String what, String expected) {
    this.what = what;
    this.expected = expected;
  }

  @Override
  public final Double convert(String text) {
    if (!text.matches("-?[0-9]{1,5}(\\.[0-9]{1,6})?")) {
      throw new TypeConversionException(
          "\"" + text + "\" is no " + what + ": I expected " + expected);
    }
    return Double.valueOf(text);
  }
}

package hingetone.text;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The characters that whoever reads the output takes, as the locale says: what it cannot take is
 * printed as a question mark.
 */
public final class OutputCharset {
  /** In the order of POSIX.1-2017, 8.2: the first that is not empty counts. */
  private static final List<String> LOCALE = List.of("LC_ALL", "LC_CTYPE", "LANG");

  /** Where Java says what a console or, without one, the system writes; from the nearest on. */
  private static final List<String> PROPERTIES =
      List.of("stdout.encoding", "sun.stdout.encoding", "native.encoding");

  private OutputCharset() {}

  /**
   * What the locale of an environment says. One that names a character set is believed even where
   * it is not installed, as when it comes from the machine in front of a remote one; one that names
   * none, and a system without locales, are as Java finds them.
   */
  public static Charset of(Map<String, String> environment) {
    return of(environment, System::getProperty);
  }

  static Charset of(Map<String, String> environment, UnaryOperator<String> property) {
    String locale =
        LOCALE.stream()
            .map(name -> environment.getOrDefault(name, ""))
            .filter(value -> !value.isEmpty())
            .findFirst()
            .orElse("");
    if (locale.equals("C") || locale.equals("POSIX")) {
      return StandardCharsets.US_ASCII;
    }
    String named = locale.replaceFirst("^[^.]*\\.?", "").replaceFirst("@.*", "");
    return Stream.concat(Stream.of(named), PROPERTIES.stream().map(property))
        .filter(Objects::nonNull)
        .flatMap(name -> find(name).stream())
        .findFirst()
        .orElse(StandardCharsets.US_ASCII);
  }

  private static Optional<Charset> find(String name) {
    try {
      return Optional.of(Charset.forName(name));
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return Optional.empty();
    }
  }

  /** Whether a character set has every character. */
  public static boolean isUnicode(Charset charset) {
    return charset.name().startsWith("UTF-");
  }
}

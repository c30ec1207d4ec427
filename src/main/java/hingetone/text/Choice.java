package hingetone.text;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The constants of an enum as the words of a file: {@code close}, {@code open}. */
public final class Choice {
  private Choice() {}

  /** The constant that a word names, in either case. */
  public static <E extends Enum<E>> Optional<E> named(E[] choices, String word) {
    return Arrays.stream(choices).filter(choice -> word(choice).equalsIgnoreCase(word)).findFirst();
  }

  /** The words for all of them, in order. */
  public static <E extends Enum<E>> List<String> words(E[] choices) {
    return Arrays.stream(choices).map(Choice::word).toList();
  }

  /** The word for one. */
  public static String word(Enum<?> choice) {
    return choice.name().toLowerCase(Locale.ROOT);
  }
}

package hingetone.chart;

import hingetone.text.Suggestion;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.theory.ScaleType;
import hingetone.time.Beats;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Guesses what a value that cannot be read was meant to be. A guess may be wrong in itself: whoever
 * asks checks that it can be read.
 */
final class ValueGuess {
  private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)?");

  private ValueGuess() {}

  /** The nearest of some words. */
  static Function<String, Optional<String>> oneOf(Collection<String> words) {
    return text -> Suggestion.nearest(text, words);
  }

  /** The number in {@code 112 bpm} or {@code 112,5}. */
  static Optional<String> number(String text) {
    Matcher found = NUMBER.matcher(text);
    return found.find() ? Optional.of(found.group().replace(',', '.')) : Optional.empty();
  }

  /** The meter in {@code 4-4}, {@code 6 8} or {@code C}. */
  static Optional<String> meter(String text) {
    return Optional.of(
        text.equalsIgnoreCase("C") ? "4/4" : text.strip().replaceAll("[^0-9]+", "/"));
  }

  /** The fraction for a decimal of halves or quarters: {@code 3/2} for {@code 1.5}. */
  static Optional<String> beats(String text) {
    return number(text)
        .filter(n -> n.matches("[0-9]{1,2}\\.(0|5|50|25|75)"))
        .map(n -> (int) (Double.parseDouble(n) * 4))
        .map(ValueGuess::fraction);
  }

  private static String fraction(int quarters) {
    Beats beats = Beats.of(quarters, 4);
    return beats.numerator() + (beats.denominator() == 1 ? "" : "/" + beats.denominator());
  }

  /** The key in {@code Cm}, {@code C min}, {@code C}, {@code c minr} or the German {@code H}. */
  static Optional<String> key(String text) {
    String english = text.replaceFirst("^[hH]", "B").replaceFirst("^(.) +([#b]) ", "$1$2 ");
    int end = NoteName.prefixLength(english);
    if (end == 0) {
      return Optional.empty();
    }
    String tonic = english.substring(0, 1).toUpperCase(Locale.ROOT) + english.substring(1, end);
    String mode = english.substring(end).strip();
    String first = mode.split("[\\s-]", 2)[0];
    if (mode.isEmpty() || List.of("M", "maj", "Maj", "dur").contains(first)) {
      return Optional.of(tonic + " major");
    }
    if (List.of("m", "-", "min", "moll").contains(first) || mode.startsWith("-")) {
      return Optional.of(tonic + " minor");
    }
    return Suggestion.nearest(first, Key.MODES.stream().map(ScaleType::name).toList())
        .map(m -> tonic + " " + m);
  }
}

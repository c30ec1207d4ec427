package hingetone.groove;

import hingetone.text.Problems;
import hingetone.text.Quote;
import hingetone.text.Span;
import hingetone.text.Suggestion;
import hingetone.text.Yaml;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The keys with values of one place in a groove, each known there; the rest is reported. */
final class GrooveFields {
  private final Problems problems;
  private final Yaml.Mapping mapping;
  private final String where;
  private final Map<String, Yaml> values = new LinkedHashMap<>();

  /**
   * Takes the keys of a mapping.
   *
   * @param where for messages: {@code in drums}
   * @param known the keys that may stand there
   */
  GrooveFields(Problems problems, Yaml.Mapping mapping, String where, List<String> known) {
    this.problems = problems;
    this.mapping = mapping;
    this.where = where;
    for (Yaml.Entry entry : mapping.entries()) {
      String key = entry.key().value();
      if (known.contains(key)) {
        values.put(key, entry.value());
      } else {
        problems.add(
            entry.key().span(),
            "unknown key \"" + Quote.of(key) + "\"",
            "I know these keys " + where + ": " + String.join(", ", known) + ".",
            Suggestion.nearest(key, known));
      }
    }
  }

  /** A part of the same groove, where it is keys with values. */
  Optional<GrooveFields> part(String key, List<String> known) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Mapping part) {
      return Optional.of(new GrooveFields(problems, part, "in " + key, known));
    }
    if (value != null) {
      wrong(key, value, "I expected keys with values below it: " + String.join(", ", known) + ".");
    }
    return Optional.empty();
  }

  /** A part that must be there. */
  Optional<GrooveFields> required(String key, List<String> known) {
    if (!values.containsKey(key)) {
      missing(key);
    }
    return part(key, known);
  }

  /** The items of a list of keys with values; one alone may stand without the dash. */
  List<GrooveFields> list(String key, List<String> known) {
    Yaml value = values.get(key);
    if (value == null) {
      return List.of();
    }
    List<Yaml> items = value instanceof Yaml.Sequence list ? list.items() : List.of(value);
    items.stream()
        .filter(item -> !(item instanceof Yaml.Mapping))
        .forEach(item -> wrong(key, item, "I expected a list, each item with keys of its own."));
    return items.stream()
        .filter(Yaml.Mapping.class::isInstance)
        .map(item -> new GrooveFields(problems, (Yaml.Mapping) item, "in " + key, known))
        .toList();
  }

  /** The entries of a part whose keys are free. */
  List<Yaml.Entry> entries(String key, String expected) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Mapping part) {
      return part.entries();
    }
    if (value != null) {
      wrong(key, value, expected);
    }
    return List.of();
  }

  /**
   * Reads a single value.
   *
   * @param read gives the value, or nothing where the text is none
   * @param usual what holds where the key does not stand or cannot be read
   * @param expected what would be right, with an example
   * @param known words that may have been meant
   */
  <T> T read(
      String key,
      Function<String, Optional<T>> read,
      T usual,
      String expected,
      List<String> known) {
    Yaml value = values.get(key);
    if (value == null) {
      return usual;
    }
    if (!(value instanceof Yaml.Text text) || text.isEmpty()) {
      wrong(key, value, expected);
      return usual;
    }
    Optional<T> found = read.apply(text.value().strip());
    if (found.isEmpty()) {
      problems.add(
          text.span(),
          "\"" + Quote.of(text.value()) + "\" is no " + key,
          expected,
          Suggestion.nearest(text.value().strip(), known));
    }
    return found.orElse(usual);
  }

  <T> T read(String key, Function<String, Optional<T>> read, T usual, String expected) {
    return read(key, read, usual, expected, List.of());
  }

  /** Reads a whole number, its unit (if any) behind it. */
  int whole(String key, int least, int most, int usual, String unit) {
    return read(
        key,
        text -> wholeNumber(text, unit).filter(n -> n >= least && n <= most),
        usual,
        "I expected a number from "
            + least
            + " to "
            + most
            + (unit.isEmpty() ? "." : ", as in " + key + ": " + usual + unit + "."));
  }

  static Optional<Integer> wholeNumber(String text, String unit) {
    String number =
        text.endsWith(unit) ? text.substring(0, text.length() - unit.length()).strip() : text;
    return number.matches("-?[0-9]{1,4}")
        ? Optional.of(Integer.parseInt(number))
        : Optional.empty();
  }

  /** The text of a key with its place, where it is a single value. */
  Optional<Yaml.Text> text(String key) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Text text && !text.isEmpty()) {
      return Optional.of(text);
    }
    if (value != null) {
      wrong(key, value, "I expected a single value.");
    }
    return Optional.empty();
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  void missing(String key) {
    int start = mapping.span().start();
    problems.add(
        new Span(start, Math.min(start + 1, mapping.span().end())),
        "no \"" + key + "\" " + where,
        "The page on grooves says what it needs: src/docs/grooves.md.");
  }

  private void wrong(String key, Yaml value, String expected) {
    problems.add(value.span(), "\"" + key + "\" has " + value.kind() + " as its value", expected);
  }
}

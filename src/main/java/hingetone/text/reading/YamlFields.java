package hingetone.text.reading;

import hingetone.text.Quote;
import hingetone.text.Suggestion;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The keys with values of one place in a YAML document, each known there; the rest is reported.
 *
 * <pre>{@code
 * YamlFields fields = new YamlFields(problems, mapping, "in a groove", List.of("tempo", "meter"), "See ...");
 * Meter meter = fields.read("meter", Meter::parse, Meter.COMMON, "I expected a meter, as in meter: 6/8.");
 * }</pre>
 */
public final class YamlFields {
  private final Problems problems;
  private final Yaml.Mapping mapping;
  private final String where;
  private final String help;
  private final Map<String, Yaml> values = new LinkedHashMap<>();
  private final Map<String, Span> places = new LinkedHashMap<>();

  /**
   * Takes the keys of a mapping.
   *
   * @param where for messages: {@code in drums}
   * @param known the keys that may stand there
   * @param help where a key is missing, a sentence that says where the format is described
   */
  public YamlFields(
      Problems problems, Yaml.Mapping mapping, String where, List<String> known, String help) {
    this.problems = problems;
    this.mapping = mapping;
    this.where = where;
    this.help = help;
    for (Yaml.Entry entry : mapping.entries()) {
      String key = entry.key().value();
      if (known.contains(key)) {
        values.put(key, entry.value());
        places.put(key, entry.key().span());
      } else {
        problems.add(
            entry.key().span(),
            "unknown key \"" + Quote.of(key) + "\"",
            "I know these keys " + where + ": " + String.join(", ", known) + ".",
            Suggestion.nearest(key, known));
      }
    }
  }

  /** A part of the same document, where it is keys with values. */
  public Optional<YamlFields> part(String key, List<String> known) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Mapping part) {
      return Optional.of(new YamlFields(problems, part, "in " + key, known, help));
    }
    if (value != null) {
      wrong(key, value, "I expected keys with values below it: " + String.join(", ", known) + ".");
    }
    return Optional.empty();
  }

  /** The items of a list of keys with values; one alone may stand without the dash. */
  public List<YamlFields> list(String key, List<String> known) {
    Yaml value = values.get(key);
    if (value == null) {
      return List.of();
    }
    List<Yaml> items = value instanceof Yaml.Sequence list ? list.items() : List.of(value);
    String expected = "I expected a list, each item with keys of its own.";
    if (items.isEmpty()) {
      problems.add(value.span(), "\"" + key + "\" is an empty list", expected);
    }
    items.stream()
        .filter(item -> !(item instanceof Yaml.Mapping))
        .forEach(item -> wrong(key, item, expected));
    return items.stream()
        .filter(Yaml.Mapping.class::isInstance)
        .map(item -> new YamlFields(problems, (Yaml.Mapping) item, "in " + key, known, help))
        .toList();
  }

  /** The entries of a part whose keys are free; where it stands there must be one. */
  public List<Yaml.Entry> entries(String key, String expected) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Mapping part) {
      if (part.entries().isEmpty()) {
        problems.add(places.get(key), "\"" + key + "\" is empty", expected);
      }
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
  public <T> T read(
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

  /** Reads a single value, with no words that may have been meant. */
  public <T> T read(String key, Function<String, Optional<T>> read, T usual, String expected) {
    return read(key, read, usual, expected, List.of());
  }

  /** The text of a key with its place, where it is a single value. */
  public Optional<Yaml.Text> text(String key) {
    return text(key, "I expected a single value.");
  }

  /** The text of a key with its place; {@code expected} says what would be right. */
  public Optional<Yaml.Text> text(String key, String expected) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Text text && !text.isEmpty()) {
      return Optional.of(text);
    }
    if (value != null) {
      wrong(key, value, expected);
    }
    return Optional.empty();
  }

  /** Whether a key stands here. */
  public boolean has(String key) {
    return values.containsKey(key);
  }

  /** Where a key that stands here stands. */
  public Span place(String key) {
    return places.get(key);
  }

  /** Where the keys stand with all that belongs to them. */
  public Span span() {
    return mapping.span();
  }

  /** Reports that a key does not stand here. */
  public void missing(String key) {
    missing(key, help);
  }

  /** Reports that a key does not stand here; {@code expected} says what it is for. */
  public void missing(String key, String expected) {
    int start = mapping.span().start();
    problems.add(
        new Span(start, Math.min(start + 1, mapping.span().end())),
        "no \"" + key + "\" " + where,
        expected);
  }

  private void wrong(String key, Yaml value, String expected) {
    boolean nothing = value instanceof Yaml.Text text && text.isEmpty();
    problems.add(
        nothing ? places.get(key) : value.span(),
        "\"" + key + "\" has " + value.kind() + " as its value",
        expected);
  }
}

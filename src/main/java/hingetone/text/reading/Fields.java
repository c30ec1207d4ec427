package hingetone.text.reading;

import hingetone.text.Quote;
import hingetone.text.Suggestion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The keys with values of one place in a YAML document, each known and allowed there; the rest is
 * reported.
 *
 * <pre>{@code
 * Fields fields = new Fields(problems, mapping, new KeyTable("in a groove", keys, keys));
 * Meter meter = fields.read(METER, Meter::parse, Meter.COMMON, "I expected a meter, as in 6/8.");
 * }</pre>
 */
public final class Fields {
  private static final Pattern WORD = Pattern.compile("[^\\s,]+");
  private static final Pattern PHRASE = Pattern.compile("[^\\s,](?:[^,\\n]*[^\\s,])?");

  private final Problems problems;
  private final Yaml.Mapping mapping;
  private final KeyTable table;
  private final Map<String, Yaml> values = new LinkedHashMap<>();
  private final Map<String, Span> places = new LinkedHashMap<>();

  /** Takes the keys of {@code mapping}, noting every one that is unknown or stands elsewhere. */
  public Fields(Problems problems, Yaml.Mapping mapping, KeyTable table) {
    this.problems = problems;
    this.mapping = mapping;
    this.table = table;
    List<String> known = table.words();
    for (Yaml.Entry entry : mapping.entries()) {
      if (known.contains(entry.key().value())) {
        values.put(entry.key().value(), entry.value());
        places.put(entry.key().value(), entry.key().span());
      } else {
        table
            .elsewhere(entry.key().value())
            .ifPresentOrElse(
                stands -> misplaced(entry.key(), stands), () -> unknown(entry.key(), known));
      }
    }
  }

  private void misplaced(Yaml.Text key, String stands) {
    problems.add(
        key.span(),
        "\"" + key.value() + "\" cannot stand " + table.where(),
        "It stands " + stands + ".");
  }

  private void unknown(Yaml.Text key, List<String> known) {
    problems.add(
        key.span(),
        "unknown key \"" + Quote.of(key.value()) + "\"",
        "I know these keys " + table.where() + ": " + String.join(", ", known) + ".",
        Suggestion.nearest(key.value(), known));
  }

  /** A part of the same document, where it is keys with values. */
  public Optional<Fields> part(Field key, KeyTable inside) {
    String expected =
        "I expected keys with values below it: " + String.join(", ", inside.words()) + ".";
    return mapping(key, expected).map(part -> new Fields(problems, part, inside));
  }

  /** The items of a list of keys with values; one alone may stand without the dash. */
  public List<Fields> list(Field key, KeyTable inside) {
    Yaml value = values.get(key.word());
    if (value == null) {
      return List.of();
    }
    List<Yaml> items = value instanceof Yaml.Sequence list ? list.items() : List.of(value);
    String expected = "I expected a list, each item with keys of its own.";
    if (items.isEmpty()) {
      problems.add(value.span(), "\"" + key.word() + "\" is an empty list", expected);
    }
    items.stream()
        .filter(item -> !(item instanceof Yaml.Mapping))
        .forEach(item -> wrong(key, item, expected));
    return items.stream()
        .filter(Yaml.Mapping.class::isInstance)
        .map(item -> new Fields(problems, (Yaml.Mapping) item, inside))
        .toList();
  }

  /** The entries of a part whose keys are free; where it stands there must be one. */
  public List<Yaml.Entry> entries(Field key, String expected) {
    Optional<Yaml.Mapping> part = mapping(key, expected);
    if (part.filter(found -> found.entries().isEmpty()).isPresent()) {
      problems.add(place(key), "\"" + key.word() + "\" is empty", expected);
    }
    return part.map(Yaml.Mapping::entries).orElse(List.of());
  }

  /** Whether a key stands here. */
  public boolean has(Field key) {
    return values.containsKey(key.word());
  }

  /** The key's value, of whatever kind. */
  public Optional<Yaml> value(Field key) {
    return Optional.ofNullable(values.get(key.word()));
  }

  /** Where the key itself stands. */
  public Span place(Field key) {
    return places.get(key.word());
  }

  /** The key's value where it is keys of its own. */
  public Optional<Yaml.Mapping> mapping(Field key, String expected) {
    Yaml value = values.get(key.word());
    if (value instanceof Yaml.Mapping mapping) {
      return Optional.of(mapping);
    }
    if (value != null) {
      wrong(key, value, expected);
    }
    return Optional.empty();
  }

  /**
   * Reads the key's single value.
   *
   * @param read gives the value, or nothing where the text is none
   * @param usual what holds where the key does not stand or cannot be read
   * @param meant what may have been meant by a text that is none
   * @param expected what would be right, with an example
   */
  public <T> T read(
      Field key,
      Function<String, Optional<T>> read,
      T usual,
      Function<String, Optional<String>> meant,
      String expected) {
    Optional<Yaml.Text> text = text(key, expected);
    if (text.isEmpty()) {
      return usual;
    }
    String value = text.get().value().strip();
    Optional<T> found = read.apply(value);
    if (found.isEmpty()) {
      problems.add(
          text.get().span(),
          "\"" + Quote.of(value) + "\" is no " + key.word(),
          expected,
          meant.apply(value).filter(m -> read.apply(m).isPresent()));
    }
    return found.orElse(usual);
  }

  /** Reads the key's single value, with nothing to suggest. */
  public <T> T read(Field key, Function<String, Optional<T>> read, T usual, String expected) {
    return read(key, read, usual, text -> Optional.empty(), expected);
  }

  /** The key's value where it is a single one. */
  public Optional<Yaml.Text> text(Field key, String expected) {
    Yaml value = values.get(key.word());
    if (value instanceof Yaml.Text text && !text.isEmpty()) {
      return Optional.of(text);
    }
    if (value != null) {
      wrong(key, value, expected);
    }
    return Optional.empty();
  }

  private void wrong(Field key, Yaml value, String expected) {
    if (value instanceof Yaml.Text text && text.isEmpty()) {
      problems.add(places.get(key.word()), "\"" + key.word() + "\" has no value", expected);
    } else {
      problems.add(value.span(), "\"" + key.word() + "\" cannot be " + value.kind(), expected);
    }
  }

  /** Makes a list of words that is the key's value one text, its words a space apart. */
  public void joinList(Field key) {
    if (values.get(key.word()) instanceof Yaml.Sequence list
        && list.items().stream().allMatch(Yaml.Text.class::isInstance)) {
      String joined =
          list.items().stream()
              .map(item -> ((Yaml.Text) item).value().strip())
              .collect(Collectors.joining(" "));
      values.put(key.word(), new Yaml.Text(list.span(), joined, list.span()));
    }
  }

  /** The words of a key whose value is words in a line (spaces or commas between) or a list. */
  public List<Word> words(Field key, String expected) {
    return items(key, WORD, expected);
  }

  /** The phrases of a key whose value is phrases in a line (commas between) or a list. */
  public List<Word> phrases(Field key, String expected) {
    return items(key, PHRASE, expected);
  }

  private List<Word> items(Field key, Pattern pattern, String expected) {
    Yaml value = values.get(key.word());
    List<Word> words = new ArrayList<>();
    if (value == null) {
      return words;
    }
    List<Yaml> items = value instanceof Yaml.Sequence list ? list.items() : List.of(value);
    for (Yaml item : items) {
      if (item instanceof Yaml.Text text && !text.isEmpty()) {
        words.addAll(text.words(problems.source(), pattern));
      } else if (item == value) {
        wrong(key, item, expected);
      } else {
        problems.add(item.span(), "\"" + key.word() + "\" cannot hold " + item.kind(), expected);
      }
    }
    if (items.isEmpty()) {
      problems.add(value.span(), "an empty list", expected);
    }
    return words;
  }

  /** Where the keys stand with all that belongs to them. */
  public Span span() {
    return mapping.span();
  }

  /** Reports that a key does not stand here; {@code expected} says what it is for. */
  public void missing(Field key, String expected) {
    int start = mapping.span().start();
    problems.add(
        new Span(start, Math.min(start + 1, mapping.span().end())),
        "no \"" + key.word() + "\" " + table.where(),
        expected);
  }
}

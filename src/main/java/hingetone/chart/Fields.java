package hingetone.chart;

import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.Word;
import hingetone.text.reading.Yaml;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The keys with values of one place in a chart, each known and allowed there. */
final class Fields {
  private static final Pattern WORD = Pattern.compile("[^\\s,]+");
  private static final Pattern PHRASE = Pattern.compile("[^\\s,](?:[^,\\n]*[^\\s,])?");

  private final Problems problems;
  private final Map<ChartKey, Yaml> values = new EnumMap<>(ChartKey.class);
  private final Map<ChartKey, Span> places = new EnumMap<>(ChartKey.class);

  /** Takes the keys of {@code mapping}, noting every one that is unknown or stands elsewhere. */
  Fields(Problems problems, Yaml.Mapping mapping, ChartKey.Place place) {
    this.problems = problems;
    for (Yaml.Entry entry : mapping.entries()) {
      Optional<ChartKey> key = ChartKey.named(entry.key().value());
      if (key.isEmpty()) {
        unknown(entry.key(), place);
      } else if (!key.get().place().allows(place)) {
        problems.add(
            entry.key().span(),
            "\"" + key.get() + "\" cannot stand " + place,
            "It stands " + key.get().place() + ".");
      } else {
        values.put(key.get(), entry.value());
        places.put(key.get(), entry.key().span());
      }
    }
  }

  private void unknown(Yaml.Text key, ChartKey.Place place) {
    List<String> known = ChartKey.words(place);
    problems.add(
        key.span(),
        "unknown key \"" + Quote.of(key.value()) + "\"",
        "I know these keys " + place + ": " + String.join(", ", known) + ".",
        Suggestion.nearest(key.value(), known));
  }

  boolean has(ChartKey key) {
    return values.containsKey(key);
  }

  Optional<Yaml> value(ChartKey key) {
    return Optional.ofNullable(values.get(key));
  }

  /** Where the key itself stands. */
  Span place(ChartKey key) {
    return places.get(key);
  }

  /** The key's value where it is keys of its own. */
  Optional<Yaml.Mapping> mapping(ChartKey key, String expected) {
    Yaml value = values.get(key);
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
  <T> T read(
      ChartKey key,
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
          "\"" + Quote.of(value) + "\" is no " + key,
          expected,
          meant.apply(value).filter(m -> read.apply(m).isPresent()));
    }
    return found.orElse(usual);
  }

  /** Reads the key's single value, with nothing to suggest. */
  <T> T read(ChartKey key, Function<String, Optional<T>> read, T usual, String expected) {
    return read(key, read, usual, text -> Optional.empty(), expected);
  }

  /** Reads the key's value as a whole number. */
  int whole(ChartKey key, int least, int most, int usual, String expected) {
    return read(key, text -> Values.whole(text, least, most), usual, ValueGuess::number, expected);
  }

  /** The key's value where it is a single one. */
  Optional<Yaml.Text> text(ChartKey key, String expected) {
    Yaml value = values.get(key);
    if (value instanceof Yaml.Text text && !text.isEmpty()) {
      return Optional.of(text);
    }
    if (value != null) {
      wrong(key, value, expected);
    }
    return Optional.empty();
  }

  private void wrong(ChartKey key, Yaml value, String expected) {
    if (value instanceof Yaml.Text text && text.isEmpty()) {
      problems.add(places.get(key), "\"" + key + "\" has no value", expected);
    } else {
      problems.add(value.span(), "\"" + key + "\" cannot be " + value.kind(), expected);
    }
  }

  /** Makes a list of words that is the key's value one text, its words a space apart. */
  void joinList(ChartKey key) {
    if (values.get(key) instanceof Yaml.Sequence list
        && list.items().stream().allMatch(Yaml.Text.class::isInstance)) {
      String joined =
          list.items().stream()
              .map(item -> ((Yaml.Text) item).value().strip())
              .collect(Collectors.joining(" "));
      values.put(key, new Yaml.Text(list.span(), joined, list.span()));
    }
  }

  /** The words of a key whose value is words in a line (spaces or commas between) or a list. */
  List<Word> words(ChartKey key, String expected) {
    return items(key, WORD, expected);
  }

  /** The phrases of a key whose value is phrases in a line (commas between) or a list. */
  List<Word> phrases(ChartKey key, String expected) {
    return items(key, PHRASE, expected);
  }

  private List<Word> items(ChartKey key, Pattern pattern, String expected) {
    Yaml value = values.get(key);
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
        problems.add(item.span(), "\"" + key + "\" cannot hold " + item.kind(), expected);
      }
    }
    if (items.isEmpty()) {
      problems.add(value.span(), "an empty list", expected);
    }
    return words;
  }
}

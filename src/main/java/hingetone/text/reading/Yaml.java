package hingetone.text.reading;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A YAML document as a tree in which every value keeps its place.
 *
 * <p>Scalars are texts, whatever they look like: whoever reads a value says what it must be.
 */
public sealed interface Yaml {
  /** Where it stands in the source. */
  Span span();

  /** What it is, for messages: {@code a list}. */
  String kind();

  /**
   * A single value.
   *
   * @param span its place, quotes or the block's {@code |} included
   * @param value its text as YAML gives it
   * @param inner its text as it stands in the source: for a block the lines below the {@code |},
   *     for a quoted value what is between the quotes
   */
  record Text(Span span, String value, Span inner) implements Yaml {
    /** Whether nothing was written: {@code key:} alone. */
    public boolean isEmpty() {
      return value.isBlank();
    }

    /** The pieces of the text that match a pattern, with their places. */
    public List<Word> words(Source source, Pattern pattern) {
      return Word.all(source, inner, pattern);
    }

    @Override
    public String kind() {
      return isEmpty() ? "nothing" : "a single value";
    }
  }

  /** A list of values. */
  record Sequence(Span span, List<Yaml> items) implements Yaml {
    @Override
    public String kind() {
      return "a list";
    }
  }

  /** Keys with values, each key once. */
  record Mapping(Span span, List<Entry> entries) implements Yaml {
    /** The entry with a key. */
    public Optional<Entry> entry(String key) {
      return entries.stream().filter(e -> e.key().value().equals(key)).findFirst();
    }

    @Override
    public String kind() {
      return "a group of keys";
    }
  }

  /** A key and its value. */
  record Entry(Text key, Yaml value) {}

  /**
   * Reads a document. Whatever is wrong with it as YAML is added to the problems; so is what this
   * program does not take: anchors, aliases, tags, a key given twice, lines of more than 10,000
   * characters, nesting deeper than 32.
   *
   * @return the document; empty where it cannot be read at all, and then there is a problem
   */
  static Optional<Yaml> read(Problems problems) {
    return new YamlReader(problems).read();
  }
}

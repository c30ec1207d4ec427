package hingetone.groove;

import hingetone.text.Choice;
import hingetone.text.Suggestion;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.WholeText;
import hingetone.text.reading.Yaml;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The keys with values of one place in a groove.
 *
 * @param fields the same by their words
 */
record GrooveFields(Fields fields) {
  /** The keys at the top of a groove. */
  static GrooveFields of(Problems problems, Yaml.Mapping groove) {
    return new GrooveFields(new Fields(problems, groove, GrooveKey.table(GrooveKey.Place.GROOVE)));
  }

  /** A part of the same groove, where it is keys with values. */
  Optional<GrooveFields> part(GrooveKey key, GrooveKey.Place inside) {
    return fields.part(key, GrooveKey.table(inside)).map(GrooveFields::new);
  }

  /** The items of a list of keys with values; one alone may stand without the dash. */
  List<GrooveFields> list(GrooveKey key, GrooveKey.Place inside) {
    return fields.list(key, GrooveKey.table(inside)).stream().map(GrooveFields::new).toList();
  }

  /** The entries of a part whose keys are free, at least one. */
  List<Yaml.Entry> entries(GrooveKey key, String expected) {
    return fields.entries(key, expected);
  }

  /**
   * Reads a single value.
   *
   * @param read gives the value, or nothing where the text is none
   * @param what what would be right: {@code the slowest and the fastest tempo}
   * @param known words that may have been meant
   * @return the value; empty where the key does not stand or cannot be read
   */
  <T> Optional<T> read(
      GrooveKey key, Function<String, Optional<T>> read, String what, List<String> known) {
    String expected = "I expected " + what + ", as in " + key.word() + ": " + key.example() + ".";
    Function<String, Optional<Optional<T>>> found = text -> read.apply(text).map(Optional::of);
    return fields.read(
        key, found, Optional.empty(), text -> Suggestion.nearest(text, known), expected);
  }

  <T> Optional<T> read(GrooveKey key, Function<String, Optional<T>> read, String what) {
    return read(key, read, what, List.of());
  }

  /** Reads a whole number, its unit (if any) behind it. */
  int whole(GrooveKey key, int least, int most, int usual, String unit) {
    return read(
            key,
            text -> WholeText.read(text, unit, least, most),
            "a whole number from " + least + " to " + most)
        .orElse(usual);
  }

  boolean yes(GrooveKey key, boolean usual) {
    return read(key, GrooveValues::yesOrNo, "yes or no", List.of("yes", "no")).orElse(usual);
  }

  <E extends Enum<E>> Optional<E> choice(GrooveKey key, E[] choices) {
    List<String> words = Choice.words(choices);
    return read(
        key, text -> Choice.named(choices, text), "one of " + String.join(", ", words), words);
  }

  /** The text of a key with its place, where it is a single value. */
  Optional<Yaml.Text> text(GrooveKey key, String expected) {
    return fields.text(key, expected);
  }

  /** Where a key that stands here stands. */
  Span place(GrooveKey key) {
    return fields.place(key);
  }

  /** Where it all stands. */
  Span span() {
    return fields.span();
  }

  /** Reports a key that must be there and is not. */
  void require(GrooveKey key) {
    if (!fields.has(key)) {
      String example =
          key.example().isEmpty() ? "" : ", as in " + key.word() + ": " + key.example();
      fields.missing(key, "I expected " + key.meaning().replace("`", "") + example + ".");
    }
  }
}

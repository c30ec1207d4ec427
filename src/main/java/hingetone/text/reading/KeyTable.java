package hingetone.text.reading;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The keys of one place in a file.
 *
 * @param where for messages: {@code in drums}
 * @param keys the keys that may stand there
 * @param format every key of the format
 */
public record KeyTable(String where, List<? extends Field> keys, List<? extends Field> format) {
  public KeyTable {
    keys = List.copyOf(keys);
    format = List.copyOf(format);
  }

  /** Of all keys of a format those that may stand in a place. */
  public static <F extends Field> KeyTable of(String where, F[] format, Predicate<F> stands) {
    return new KeyTable(where, Arrays.stream(format).filter(stands).toList(), List.of(format));
  }

  /** The words of the keys that may stand here. */
  public List<String> words() {
    return keys.stream().map(Field::word).toList();
  }

  /** Where a key that may not stand here stands; empty where the format has no such key. */
  Optional<String> elsewhere(String word) {
    return format.stream().filter(key -> key.word().equals(word)).map(Field::stands).findFirst();
  }
}

package hingetone.text.reading;

import java.util.List;
import java.util.Optional;

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

  /** The words of the keys that may stand here. */
  public List<String> words() {
    return keys.stream().map(Field::word).toList();
  }

  /** Where a key that may not stand here stands; empty where the format has no such key. */
  Optional<String> elsewhere(String word) {
    return format.stream().filter(key -> key.word().equals(word)).map(Field::stands).findFirst();
  }
}

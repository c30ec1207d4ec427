package hingetone.text.reading;

/** A key of a file's format: the reader takes it, and the format's page has a row for it. */
public interface Field {
  /**
   * What a format's page says of a key, but for where it stands.
   *
   * @param word the key as it is written
   * @param meaning what it says, in a few words
   * @param usual what holds where the key does not stand
   * @param example a value that is read; empty where the value is keys of its own
   */
  record Row(String word, String meaning, String usual, String example) {}

  Row row();

  /** Where it may stand: {@code in a section}. */
  String stands();

  default String word() {
    return row().word();
  }

  default String meaning() {
    return row().meaning();
  }

  default String example() {
    return row().example();
  }
}

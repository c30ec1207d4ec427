package hingetone.text.reading;

/** A key of a file's format: the reader takes it, and the format's page has a row for it. */
public interface Field {
  /** The key as it is written. */
  String word();

  /** Where it may stand: {@code in a section}. */
  String stands();

  /** What it says, in a few words. */
  String meaning();

  /** What holds where the key does not stand. */
  String usual();

  /** A value that is read; empty where the value is keys of its own. */
  String example();
}

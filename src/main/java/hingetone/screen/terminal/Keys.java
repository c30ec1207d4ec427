package hingetone.screen.terminal;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.jline.utils.NonBlockingReader;

/**
 * Reads keys and gives them their names. What is no key is dropped: text that was pasted, and
 * sequences (ECMA-48, 5.4) of keys that have no name here.
 */
final class Keys {
  /** How long a lone Escape waits for the rest of a longer sequence. */
  private static final long ESCAPE_MILLIS = 60;

  /** After so long a silence a paste is over, even where its end got lost. */
  private static final long PASTE_MILLIS = 2000;

  /** To wait for ever would keep the terminal from being closed: JLine's lock is held so long. */
  private static final long LONG_MILLIS = 10_000;

  private static final char ESCAPE = '\033';
  private static final String PASTE = "200~";
  private static final String END_OF_PASTE = "\033[201~";

  private static final Map<Character, String> CONTROLS =
      Map.of(
          ' ', "space",
          '\r', "enter",
          '\n', "enter",
          '\t', "tab",
          '\003', "ctrl c",
          '\014', "ctrl l",
          '\032', "ctrl z",
          '\b', "backspace",
          '\177', "backspace");

  /** What follows {@code ESC [} or {@code ESC O}, as xterm and its kin, rxvt and Linux send it. */
  private static final Map<String, String> SEQUENCES =
      Map.ofEntries(
          Map.entry("A", "up"),
          Map.entry("B", "down"),
          Map.entry("C", "right"),
          Map.entry("D", "left"),
          Map.entry("H", "home"),
          Map.entry("1~", "home"),
          Map.entry("7~", "home"),
          Map.entry("F", "end"),
          Map.entry("4~", "end"),
          Map.entry("8~", "end"),
          Map.entry("5~", "page up"),
          Map.entry("6~", "page down"));

  private final NonBlockingReader reader;

  /** A character that was read too early; 0 for none. */
  private int next;

  Keys(NonBlockingReader reader) {
    this.reader = reader;
  }

  /**
   * Waits for a key and gives its name; empty when there will be no more.
   *
   * @throws IOException when the terminal can no longer be read
   */
  Optional<String> next() throws IOException {
    for (int c = await(); c >= 0; c = await()) {
      String key = c == ESCAPE ? afterEscape() : named(c);
      if (!key.isEmpty()) {
        return Optional.of(key);
      }
    }
    return Optional.empty();
  }

  /** The next character, whenever it comes; negative when there will be no more. */
  private int await() throws IOException {
    int c = read(LONG_MILLIS);
    while (c == NonBlockingReader.READ_EXPIRED) {
      c = read(LONG_MILLIS);
    }
    return c;
  }

  /** The next character, waited for so many milliseconds; negative for none. */
  private int read(long millis) throws IOException {
    int early = next;
    next = 0;
    return early == 0 ? reader.read(millis) : early;
  }

  private String named(int c) throws IOException {
    String control = CONTROLS.get((char) c);
    if (control != null || Character.isISOControl(c)) {
      return control == null ? "" : control;
    }
    return Character.isHighSurrogate((char) c)
        ? Character.toString(Character.toCodePoint((char) c, (char) read(ESCAPE_MILLIS)))
        : Character.toString(c);
  }

  private String afterEscape() throws IOException {
    int c = read(ESCAPE_MILLIS);
    if (c == '[') {
      String sequence = sequence();
      if (sequence.equals(PASTE)) {
        dropPaste();
      }
      return SEQUENCES.getOrDefault(sequence, "");
    }
    if (c == 'O') {
      return SEQUENCES.getOrDefault(Character.toString(Math.max(0, read(ESCAPE_MILLIS))), "");
    }
    next = c == ESCAPE ? c : 0;
    // A character right after Escape is one struck together with Alt, which does nothing here.
    return c < 0 || c == ESCAPE ? "esc" : "";
  }

  /** Parameters and intermediates up to and with the final character. */
  private String sequence() throws IOException {
    StringBuilder sequence = new StringBuilder();
    int c = read(ESCAPE_MILLIS);
    while (c >= ' ' && c < '@') {
      sequence.append((char) c);
      c = read(ESCAPE_MILLIS);
    }
    if (c == '[' && sequence.isEmpty()) {
      // The function keys of Linux' own console: ESC [ [ and a letter.
      c = read(ESCAPE_MILLIS) < 0 ? -1 : '[';
    }
    return c < 0 ? "" : sequence.append((char) c).toString();
  }

  private void dropPaste() throws IOException {
    int found = 0;
    for (int c = read(PASTE_MILLIS); c >= 0; c = read(PASTE_MILLIS)) {
      found = c == END_OF_PASTE.charAt(found) ? found + 1 : c == ESCAPE ? 1 : 0;
      if (found == END_OF_PASTE.length()) {
        return;
      }
    }
  }
}

package hingetone.screen.terminal;

import java.io.IOError;
import java.util.Map;
import java.util.Optional;
import org.jline.keymap.BindingReader;
import org.jline.keymap.KeyMap;
import org.jline.reader.EndOfFileException;
import org.jline.terminal.Terminal;
import org.jline.utils.InfoCmp.Capability;

/** Reads keys and gives them their names. */
final class Keys {
  /** How long a lone Escape waits for the rest of a longer sequence. */
  private static final long ESCAPE_MILLIS = 60;

  private static final String CHARACTER = "character";

  private static final Map<String, String> CONTROLS =
      Map.of(
          " ", "space",
          "\r", "enter",
          "\n", "enter",
          "\t", "tab",
          "\033", "esc",
          "\003", "ctrl c",
          "\014", "ctrl l",
          "\177", "backspace");

  /** Sequences in both cursor-key modes, as xterm and its kin send them. */
  private static final Map<String, String> SEQUENCES =
      Map.ofEntries(
          Map.entry("\033[A", "up"),
          Map.entry("\033OA", "up"),
          Map.entry("\033[B", "down"),
          Map.entry("\033OB", "down"),
          Map.entry("\033[C", "right"),
          Map.entry("\033OC", "right"),
          Map.entry("\033[D", "left"),
          Map.entry("\033OD", "left"),
          Map.entry("\033[H", "home"),
          Map.entry("\033OH", "home"),
          Map.entry("\033[1~", "home"),
          Map.entry("\033[F", "end"),
          Map.entry("\033OF", "end"),
          Map.entry("\033[4~", "end"),
          Map.entry("\033[5~", "page up"),
          Map.entry("\033[6~", "page down"));

  private static final Map<Capability, String> CAPABILITIES =
      Map.of(
          Capability.key_up, "up",
          Capability.key_down, "down",
          Capability.key_left, "left",
          Capability.key_right, "right",
          Capability.key_home, "home",
          Capability.key_end, "end",
          Capability.key_ppage, "page up",
          Capability.key_npage, "page down");

  private final BindingReader reader;
  private final KeyMap<String> keys = new KeyMap<>();

  Keys(Terminal terminal) {
    reader = new BindingReader(terminal.reader());
    keys.setAmbiguousTimeout(ESCAPE_MILLIS);
    keys.setUnicode(CHARACTER);
    keys.setNomatch("");
    for (char c = '!'; c <= '~'; c++) {
      keys.bind(CHARACTER, Character.toString(c));
    }
    CONTROLS.forEach((bytes, name) -> keys.bind(name, bytes));
    SEQUENCES.forEach((bytes, name) -> keys.bind(name, bytes));
    CAPABILITIES.forEach(
        (capability, name) -> {
          String bytes = KeyMap.key(terminal, capability);
          if (bytes != null && !bytes.isEmpty()) {
            keys.bind(name, bytes);
          }
        });
  }

  /** Waits for a key and gives its name; empty when there will be no more. */
  Optional<String> next() {
    try {
      String name = reader.readBinding(keys);
      return Optional.ofNullable(CHARACTER.equals(name) ? reader.getLastBinding() : name);
    } catch (IOError | EndOfFileException e) {
      return Optional.empty();
    }
  }
}

package hingetone.command;

import hingetone.exchange.Bank;
import hingetone.groove.Grooves;
import java.nio.file.Path;

/** Where the player's own things lie, by the XDG Base Directory Specification. */
final class Folders {
  private Folders() {}

  /** What the player chose to see: {@code ~/.config/hingetone} unless moved. */
  static Path config() {
    return under("XDG_CONFIG_HOME", ".config");
  }

  /** The player's own grooves and phrases: {@code ~/.local/share/hingetone} unless moved. */
  static Path data() {
    return under("XDG_DATA_HOME", ".local/share");
  }

  /** The grooves that come with the program and those in the player's folder. */
  static Grooves grooves() {
    return Grooves.builtIn().withFolder(data().resolve("grooves"));
  }

  /** The statements that come with the program and those in the player's folder. */
  static Bank bank() {
    return Bank.builtIn().withFolder(data().resolve("phrases"));
  }

  private static Path under(String variable, String usual) {
    String set = System.getenv(variable);
    // The specification says that a relative path is to be ignored.
    Path base =
        set != null && Path.of(set).isAbsolute()
            ? Path.of(set)
            : Path.of(System.getProperty("user.home"), usual);
    return base.resolve("hingetone");
  }
}

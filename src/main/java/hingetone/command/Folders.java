package hingetone.command;

import hingetone.groove.Grooves;
import hingetone.output.CommandFailure;
import hingetone.phrase.StatementBank;
import hingetone.text.FileNames;
import java.io.IOException;
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

  /** The player's takes. */
  static Path takes() {
    return data().resolve("takes");
  }

  /** The practice log. */
  static Path log() {
    return data().resolve("log.sqlite");
  }

  /** The grooves that come with the program and those in the player's folder. */
  static Grooves grooves() {
    Path folder = data().resolve("grooves");
    try {
      return Grooves.builtIn().withFolder(folder);
    } catch (IOException e) {
      throw closed(folder);
    }
  }

  /** The statements that come with the program and those in the player's folder. */
  static StatementBank bank() {
    Path folder = data().resolve("phrases");
    try {
      return StatementBank.builtIn().withFolder(folder);
    } catch (IOException e) {
      throw closed(folder);
    }
  }

  private static CommandFailure closed(Path folder) {
    return CommandFailure.wrongInput("Cannot read the folder " + folder + ": may you open it?");
  }

  /** The specification says that a relative path is to be ignored. */
  private static Path under(String variable, String usual) {
    return FileNames.variable(variable)
        .map(FileNames::path)
        .filter(Path::isAbsolute)
        .orElseGet(() -> FileNames.home().resolve(usual))
        .resolve("hingetone");
  }
}

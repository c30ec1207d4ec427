package hingetone.command;

import hingetone.screen.Settings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps what the player chose to see, in a file of the user's configuration. */
final class ScreenSettings {
  private final Path file;

  /** Settings kept in a folder, which need not be there yet. */
  ScreenSettings(Path folder) {
    this.file = folder.resolve("screen");
  }

  /** What was kept; the usual where there is nothing or it cannot be read. */
  Settings read() {
    try {
      return Settings.parse(Files.readString(file));
    } catch (IOException e) {
      return Settings.USUAL;
    }
  }

  /**
   * Keeps the settings.
   *
   * @throws IOException if that is not possible
   */
  void keep(Settings settings) throws IOException {
    Files.createDirectories(file.getParent());
    Path draft = Files.writeString(file.resolveSibling("screen.new"), settings.text());
    Files.move(draft, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }
}

package hingetone.play;

import hingetone.output.CommandFailure;
import hingetone.output.Export;
import hingetone.output.Overwriting;
import hingetone.screen.ViewSettings;
import hingetone.text.Stamp;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;

/** Keeps what the player chose to see, in a file of the user's configuration. */
public final class KeptSettings {
  private final Path file;

  /** Settings kept in a folder, which need not be there yet. */
  public KeptSettings(Path folder) {
    this.file = folder.resolve("screen");
  }

  /** What was kept; the usual where there is nothing or it cannot be read. */
  ViewSettings read() {
    return text().value().map(text -> ViewSettings.parse(text.text())).orElse(ViewSettings.USUAL);
  }

  private Reading<Source> text() {
    return TextFile.read(file);
  }

  /**
   * Keeps the settings, but not in place of something that was never read.
   *
   * @throws IOException if that is not possible
   */
  void keep(ViewSettings settings) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && text().value().isEmpty()) {
      throw new IOException(file + ": " + text().problems().get(0).message());
    }
    Files.createDirectories(file.getParent());
    try (Export export = new Export(new Overwriting(List.of(), true))) {
      export.add(file, new Stamp("screen"));
      Files.writeString(export.unfinished().get(0), settings.text());
      export.finish();
    } catch (CommandFailure e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}

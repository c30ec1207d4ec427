package hingetone.groove;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/** The page on grooves with its table made from the reader's own. Run it to write it anew. */
final class GroovesPage {
  static final Path FILE = Path.of("src/docs/grooves.md");

  private GroovesPage() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }

  /** The page with the table as the reader has it now. */
  static String withTable(String page) {
    return Page.withKeys(
        page,
        GrooveKey.values(),
        key -> key.places().stream().map(Object::toString).collect(Collectors.joining(", ")));
  }
}

package hingetone.review.marks;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The page on marks with its table made from the reader's own. Run it to write it anew. */
final class MarksPage {
  static final Path FILE = Path.of("src/docs/marks.md");

  private MarksPage() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }

  /** The page with the table as the reader has it now. */
  static String withTable(String page) {
    return Page.withKeys(page, MarksKey.values(), MarksKey::stands);
  }
}

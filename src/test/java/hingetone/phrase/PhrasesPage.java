package hingetone.phrase;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The page on phrases with its table made from the reader's own. Run it to write it anew. */
final class PhrasesPage {
  static final Path FILE = Path.of("src/docs/phrases.md");

  private PhrasesPage() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }

  /** The page with the table as the reader has it now. */
  static String withTable(String page) {
    return Page.withKeys(page, PhraseKey.values(), PhraseKey::stands);
  }
}

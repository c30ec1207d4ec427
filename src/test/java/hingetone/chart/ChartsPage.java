package hingetone.chart;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The page on charts with its table made from the reader's own. Run it to write it anew. */
final class ChartsPage {
  static final Path FILE = Path.of("src/docs/charts.md");

  private ChartsPage() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }

  /** The page with the table as the reader has it now. */
  static String withTable(String page) {
    return Page.withKeys(page, ChartKey.values(), ChartKey::stands);
  }
}

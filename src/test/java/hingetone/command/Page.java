package hingetone.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tables in the pages of {@code src/docs}, written anew by the measurements they come from. */
public final class Page {
  private Page() {}

  /** Puts a table in the place of the one whose first line starts like this. */
  public static void replaceTable(Path page, String firstLine, String table) throws IOException {
    String text = Files.readString(page);
    int start = text.indexOf(firstLine);
    int end = text.indexOf("\n\n", start) + 1;
    Files.writeString(page, text.substring(0, start) + table + text.substring(end));
  }
}

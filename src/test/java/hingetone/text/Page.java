package hingetone.text;

import hingetone.text.reading.Field;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * The pages of {@code src/docs}: their tables, written anew by what they come from, and examples.
 */
public final class Page {
  private static final Pattern EXAMPLE = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL);

  private Page() {}

  /** Puts a table in the place of the one whose first line starts like this. */
  public static void replaceTable(Path page, String firstLine, String table) throws IOException {
    String text = Files.readString(page);
    int start = text.indexOf(firstLine);
    int end = text.indexOf("\n\n", start) + 1;
    Files.writeString(page, text.substring(0, start) + table + text.substring(end));
  }

  /** A page's text with another table between the marks with a name. */
  public static String withTable(String page, String name, String table) {
    String mark = "<!-- table: " + name + " -->\n";
    int start = page.indexOf(mark) + mark.length();
    return page.substring(0, start) + table + page.substring(page.indexOf("<!-- end -->", start));
  }

  /**
   * A page's text with the table of its format's keys anew.
   *
   * @param stands where a key stands, as the page says it
   */
  public static <F extends Field> String withKeys(
      String page, F[] keys, Function<F, String> stands) {
    StringBuilder table =
        new StringBuilder(
            "| key | stands | says | unless stated | example |\n|---|---|---|---|---|\n");
    for (F key : keys) {
      table.append(keyRow(key.row(), stands.apply(key)));
    }
    return withTable(page, "keys", table.toString());
  }

  /** A row; the example is the key with a value, and may be empty. */
  private static String keyRow(Field.Row row, String stands) {
    String value = row.example().replace("|", "\\|");
    String shown = value.isEmpty() ? "" : "`" + row.word() + ": " + value + "`";
    return String.join(
        " | ",
        "| `" + row.word() + "`",
        stands,
        row.meaning(),
        row.usual(),
        (shown + " |").stripLeading() + "\n");
  }

  /** The YAML that a page shows. */
  public static List<String> examples(Path page) throws IOException {
    return EXAMPLE.matcher(Files.readString(page)).results().map(r -> r.group(1)).toList();
  }
}

package hingetone.groove;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The page on grooves with its table made from the reader's own. Run it to write it anew. */
final class GroovesPage {
  static final Path FILE = Path.of("src/docs/grooves.md");
  private static final String MARK = "<!-- table: keys -->\n";
  private static final Pattern EXAMPLE = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL);

  private GroovesPage() {}

  public static void main(String[] args) throws IOException {
    Files.writeString(FILE, withTable(Files.readString(FILE)));
  }

  /** The page with the table as the reader has it now. */
  static String withTable(String page) {
    int start = page.indexOf(MARK) + MARK.length();
    return page.substring(0, start) + table() + page.substring(page.indexOf("<!-- end -->"));
  }

  private static String table() {
    StringBuilder table = new StringBuilder("| key | stands | says | unless stated | example |\n");
    table.append("|---|---|---|---|---|\n");
    for (GrooveKey key : GrooveKey.values()) {
      String places = key.places().stream().map(Object::toString).collect(Collectors.joining(", "));
      String example = key.example().isEmpty() ? "" : "`" + key.word() + ": " + key.example() + "`";
      table.append(
          String.join(
              " | ",
              "| `" + key.word() + "`",
              places,
              key.meaning(),
              key.usual(),
              (example + " |").stripLeading() + "\n"));
    }
    return table.toString();
  }

  /** The grooves that the page shows. */
  static List<String> examples() throws IOException {
    List<String> examples = new ArrayList<>();
    Matcher found = EXAMPLE.matcher(Files.readString(FILE));
    while (found.find()) {
      examples.add(found.group(1));
    }
    return examples;
  }
}

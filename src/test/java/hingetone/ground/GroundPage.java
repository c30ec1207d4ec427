package hingetone.ground;

import hingetone.text.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The page on the ground with its table of weights made from the code. Run it to write it anew. */
final class GroundPage {
  static final Path FILE = Path.of("src/docs/ground.md");
  private static final Path CODE = Path.of("src/main/java/hingetone");
  private static final List<String> CLASSES =
      List.of("ground/scales/Weights", "neck/StringAssignment");

  /** A comment, or a number with a name; comments without a number after them are left out. */
  private static final Pattern COMMENT_OR_NUMBER =
      Pattern.compile(
          "/\\*\\*(?<comment>.*?)\\*/"
              + "|static final (?:double|int) (?<name>\\w+) = (?<value>[\\d.e]+);",
          Pattern.DOTALL);

  private GroundPage() {}

  public static void main(String[] arguments) throws IOException {
    Files.writeString(FILE, withWeights(page()));
  }

  static String page() throws IOException {
    return Files.readString(FILE).replace("\r", "");
  }

  /** The page with its table as the code has the weights now. */
  static String withWeights(String page) throws IOException {
    return Page.withTable(page, "weights", table());
  }

  private static String table() throws IOException {
    StringBuilder table = new StringBuilder("| in | weights | what they are |\n|---|---|---|\n");
    for (String file : CLASSES) {
      rows(file, Files.readString(CODE.resolve(file + ".java")), table);
    }
    return table.toString();
  }

  /** A row for each comment and the numbers that follow it. */
  private static void rows(String file, String code, StringBuilder table) {
    Matcher matcher = COMMENT_OR_NUMBER.matcher(code);
    String comment = "";
    List<String> numbers = new ArrayList<>();
    while (matcher.find()) {
      if (matcher.group("comment") == null) {
        numbers.add("`" + matcher.group("name") + "` " + matcher.group("value"));
      } else {
        row(file, numbers, comment, table);
        comment = matcher.group("comment").replaceAll("\\s*\\n\\s*\\*?\\s*", " ").strip();
        numbers = new ArrayList<>();
      }
    }
    row(file, numbers, comment, table);
  }

  private static void row(String file, List<String> numbers, String comment, StringBuilder table) {
    if (!numbers.isEmpty()) {
      String in = file.substring(file.lastIndexOf('/') + 1);
      table.append("| " + in + " | " + String.join(", ", numbers) + " | " + comment + " |\n");
    }
  }
}

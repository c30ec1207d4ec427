package hingetone.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A named text that was read, with its lines, so that a place in it can be shown.
 *
 * @param name what people call it: a file name, or {@code standard input}
 * @param text the whole text
 */
public record Source(String name, String text) {

  /** The 1-based line that holds an offset (0 to the text's length, in UTF-16 units). */
  public int lineOf(int offset) {
    int line = 1;
    for (int i = text.indexOf('\n'); i >= 0 && i < offset; i = text.indexOf('\n', i + 1)) {
      line++;
    }
    return line;
  }

  /** The 1-based column of an offset, counted in characters as people see them (code points). */
  public int columnOf(int offset) {
    int start = text.lastIndexOf('\n', offset - 1) + 1;
    return text.codePointCount(start, offset) + 1;
  }

  /** A line's text, without its line break; empty past the end. */
  public String line(int number) {
    List<String> all = lines();
    return number >= 1 && number <= all.size() ? all.get(number - 1) : "";
  }

  /** The offset at which a 1-based line starts. */
  public int offsetOfLine(int number) {
    int offset = 0;
    for (int line = 1; line < number; line++) {
      int next = text.indexOf('\n', offset);
      if (next < 0) {
        return text.length();
      }
      offset = next + 1;
    }
    return offset;
  }

  /** All lines, without their line breaks. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (String line : text.split("\n", -1)) {
      lines.add(line.endsWith("\r") ? line.substring(0, line.length() - 1) : line);
    }
    return lines;
  }
}

package hingetone.text.reading;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says in a player's words what the YAML parser complains about. */
final class YamlMistake {
  private static final Pattern NO_SPACE = Pattern.compile("^\\s*[A-Za-z-]+:(?=[^\\s:/])");

  private final Problems problems;
  private final Source source;
  private final String said;
  private final int offset;
  private final int opened;

  /**
   * A complaint.
   *
   * @param said the parser's words
   * @param offset where it stopped
   * @param opened where what it was reading had begun
   */
  YamlMistake(Problems problems, String said, int offset, int opened) {
    this.problems = problems;
    this.source = problems.source();
    this.said = said.toLowerCase(Locale.ROOT);
    this.offset = offset;
    this.opened = opened;
  }

  void report() {
    int line = source.lineOf(offset);
    Span place = new Span(offset, Math.min(offset + 1, source.text().length()));
    String before = source.text().substring(source.offsetOfLine(line), offset);
    if (source.line(line).strip().startsWith("|")) {
      add(
          firstWord(line),
          "a line of bars that is not indented below its key",
          "Indent every line of a block further than its key:\n  bars: |\n    | Cm7 | F7 |");
    } else if (isSpaceMissing(line) || isSpaceMissing(line - 1)) {
      add(
          spaceMissing(isSpaceMissing(line) ? line : line - 1),
          "no space behind the colon",
          "I expected a key, a colon, a space and a value: \"tempo: 112\".");
    } else if (said.contains("not allowed") && before.contains(": ")) {
      add(
          place,
          "a colon inside a value",
          "A value with a colon and a space in it goes in quotes: title: \"Harbour: the wall\".");
    } else if (said.contains("tab") || said.contains("\t")) {
      add(
          place,
          "a tab where spaces are needed",
          "YAML counts spaces to see what belongs together. Indent with spaces.");
    } else {
      reportStructure(place);
    }
  }

  private void reportStructure(Span place) {
    Span opening = new Span(opened, Math.min(opened + 1, source.text().length()));
    if (said.contains("not allowed") || said.contains("expected <block end>")) {
      add(
          firstWord(source.lineOf(offset)),
          "this line's indentation fits none of the lines above",
          "Keys that belong together start in the same column, with a colon after each;\n"
              + "what belongs to a key is indented below it.");
    } else if (said.contains("could not find expected ':'")) {
      add(
          firstWord(source.lineOf(opened)),
          "a line that is no key with a value",
          "I expected a key, a colon, a space and a value: \"tempo: 112\".");
    } else if (said.contains("unexpected end of stream") || said.contains("document separator")) {
      add(opening, "a quote that is not closed", "Close the text with the same quote.");
    } else if (said.contains("expected ',' or")) {
      add(
          opening,
          "a bracket that is not closed",
          "I expected a comma or the closing bracket: [low, high, low].");
    } else if (said.contains("cannot start any token")) {
      add(
          place,
          "a value cannot start with \"" + source.text(place) + "\"",
          "Put the value in quotes.");
    } else {
      add(
          place,
          "this is not YAML: " + said.replaceAll("\\(\\d+\\)", "").replaceAll("\\s+", " ").strip(),
          "I expected keys with values, a line each, such as \"tempo: 112\".");
    }
  }

  private void add(Span place, String message, String expected) {
    problems.add(place, message, expected);
  }

  private boolean isSpaceMissing(int line) {
    return line > 0 && NO_SPACE.matcher(source.line(line)).find();
  }

  private Span spaceMissing(int line) {
    Matcher found = NO_SPACE.matcher(source.line(line));
    int start = source.offsetOfLine(line);
    return found.find() ? new Span(start + found.end() - 1, start + found.end()) : firstWord(line);
  }

  private Span firstWord(int line) {
    String text = source.line(line);
    int start = text.length() - text.stripLeading().length();
    int end = start;
    while (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
      end++;
    }
    return new Span(source.offsetOfLine(line), source.offsetOfLine(line)).part(start, end);
  }
}

package hingetone.text;

import java.util.Locale;

/** Says in a player's words what the YAML parser complains about. */
final class YamlMistake {
  private YamlMistake() {}

  static void add(Problems problems, String problem, int offset) {
    Source source = problems.source();
    int line = source.lineOf(offset);
    String before = source.text().substring(source.offsetOfLine(line), offset);
    String said = problem == null ? "" : problem.toLowerCase(Locale.ROOT);
    Span place = new Span(offset, Math.min(offset + 1, source.text().length()));
    if (said.contains("mapping values are not allowed") && before.contains(": ")) {
      problems.add(
          place,
          "a colon inside a value",
          "A value with a colon and a space in it goes in quotes: title: \"Harbour: the wall\".");
    } else if (said.contains("tab")
        || (before + at(source, offset)).isBlank() && said.contains("\t")) {
      problems.add(
          place,
          "a tab where spaces are needed",
          "YAML counts spaces to see what belongs together. Indent with spaces.");
    } else if (said.contains("mapping values are not allowed")
        || said.contains("expected <block end>")) {
      problems.add(
          place,
          "this line's indentation fits none of the lines above",
          "Keys that belong together start in the same column, with a colon after each;\n"
              + "what belongs to a key is indented below it.");
    } else if (said.contains("could not find expected ':'")) {
      problems.add(
          place,
          "a line that is no key and value",
          "I expected lines such as \"tempo: 112\", a key, a colon, a space and a value.");
    } else if (said.contains("unexpected end of stream") || said.contains("quoted scalar")) {
      problems.add(place, "a quote that is not closed", "Close the text with the same quote.");
    } else if (said.contains("expected ',' or")) {
      problems.add(
          place,
          "a list or a group of keys that is not closed",
          "I expected a comma or the closing bracket: [low, high, low].");
    } else if (said.contains("cannot start any token")) {
      problems.add(
          place,
          "a value cannot start with \"" + at(source, offset) + "\"",
          "Put the value in quotes.");
    } else {
      problems.add(
          place,
          "this is not YAML" + (said.isEmpty() ? "" : ": " + said.replace('\n', ' ')),
          "I expected keys and values, such as \"tempo: 112\".");
    }
  }

  private static String at(Source source, int offset) {
    return offset < source.text().length()
        ? new String(Character.toChars(source.text().codePointAt(offset)))
        : "";
  }
}

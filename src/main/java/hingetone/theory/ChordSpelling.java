package hingetone.theory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The many ways to write the words of a chord symbol: {@code min}, {@code mi}, {@code -}, … */
final class ChordSpelling {
  private static final List<String> MAJOR =
      List.of("maj", "Maj", "MAJ", "ma", "Ma", "M", "Δ", "^", "major");

  /** Each word with its spellings, the one that the tables use first. */
  static final List<List<String>> WORDS =
      List.of(
          MAJOR,
          List.of("m", "min", "Min", "MIN", "mi", "Mi", "-", "minor"),
          List.of("dim", "Dim", "°", "o"),
          List.of("aug", "Aug", "+"),
          List.of("sus", "Sus"),
          List.of("add", "Add"));

  /** Without a number a triangle is the major seventh, which the table of qualities says itself. */
  private static final Set<String> BARE_TRIANGLES = Set.of("Δ", "^");

  /** Characters that look like the ones the tables use. */
  private static final Map<Character, Character> LOOKALIKES =
      Map.ofEntries(
          Map.entry('♯', '#'),
          Map.entry('♭', 'b'),
          Map.entry('\u2212', '-'), // minus sign
          Map.entry('\u2013', '-'), // en dash
          Map.entry('\u2206', 'Δ'), // increment
          Map.entry('\u25b3', 'Δ'), // white triangle
          Map.entry('\u00ba', '°'), // masculine ordinal
          Map.entry('\u00d8', 'ø'),
          Map.entry('\u2205', 'ø'), // empty set
          Map.entry('\u2076', '6'), // superscripts
          Map.entry('\u2077', '7'),
          Map.entry('\u2079', '9'));

  private ChordSpelling() {}

  /** The text with plain characters for the look-alikes, each in its place. */
  static String plain(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    text.chars().mapToObj(c -> (char) c).forEach(c -> plain.append(LOOKALIKES.getOrDefault(c, c)));
    return plain.toString();
  }

  /** All spellings of a name as the tables write it: for {@code m7} m7, min7, mi7, -7 and so on. */
  static List<String> spellings(String name) {
    int second = name.indexOf("Maj", 1);
    if (second < 0) {
      return withFirstWord(name);
    }
    List<String> all = new ArrayList<>();
    String degree = name.substring(second + "Maj".length());
    for (String head : withFirstWord(name.substring(0, second))) {
      for (String major : MAJOR) {
        all.add(head + major + degree);
        all.add(head + "/" + major + degree);
        all.add(head + "(" + major + degree + ")");
      }
    }
    return all;
  }

  private static List<String> withFirstWord(String name) {
    for (List<String> word : WORDS) {
      if (name.startsWith(word.get(0))) {
        String rest = name.substring(word.get(0).length());
        return word.stream()
            .map(spelling -> spelling + rest)
            .filter(spelling -> !BARE_TRIANGLES.contains(spelling))
            .toList();
      }
    }
    return List.of(name);
  }
}

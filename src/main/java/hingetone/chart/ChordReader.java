package hingetone.chart;

import hingetone.text.Problems;
import hingetone.text.Quote;
import hingetone.text.Span;
import hingetone.text.Suggestion;
import hingetone.text.Word;
import hingetone.theory.Chord;
import hingetone.theory.ChordQuality;
import hingetone.theory.NoteName;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a chord symbol, and says what is wrong with one that is none. */
final class ChordReader {
  private static final int LONGEST = 40;
  private static final List<String> QUALITIES =
      ChordQuality.ALL.stream()
          .flatMap(q -> Stream.concat(Stream.of(q.suffix()), q.aliases().stream()))
          .filter(suffix -> !suffix.isEmpty())
          .toList();

  private final Problems problems;

  ChordReader(Problems problems) {
    this.problems = problems;
  }

  /** The chord; empty when it is none, and then there is a problem. */
  Optional<Chord> read(Word word) {
    String text = word.text();
    int root = NoteName.prefixLength(text);
    if (root == 0 || Character.isLowerCase(text.charAt(0)) || text.length() > LONGEST) {
      noRoot(word, root);
      return Optional.empty();
    }
    if (accidentals(text.substring(1, root)) > 2) {
      problems.add(
          word.span().part(0, root),
          "more than two sharps or flats",
          "I read roots with up to two.");
      return Optional.empty();
    }
    int slash = text.lastIndexOf('/');
    String bass = slash < 0 ? "" : text.substring(slash + 1);
    if (slash >= 0 && !bass.isEmpty() && accidentals(bass.substring(1)) > 2) {
      noBass(word, slash);
      return Optional.empty();
    }
    Optional<Chord> chord = Chord.parse(text);
    if (chord.isEmpty()) {
      mistake(word, root, slash);
    }
    return chord;
  }

  private static int accidentals(String text) {
    return text.codePoints().map(c -> c == 'x' || c > 0xFFFF ? 2 : 1).sum();
  }

  private void noRoot(Word word, int root) {
    String text = word.text();
    if (text.matches("[xX×][0-9]+")) {
      problems.add(
          word.span(),
          "\"" + Quote.of(text) + "\" without a repeat",
          "It stands behind the end of a repeat: |: Am7 | D7 :| x3.");
      return;
    }
    String capital =
        text.substring(0, 1).toUpperCase(Locale.ROOT).replace('H', 'B') + text.substring(1);
    problems.add(
        word.span(),
        "\"" + Quote.of(text) + "\" is no chord",
        "I was reading a bar and expected a chord with its root as a capital letter, A to G, / or %.",
        Optional.of(capital).filter(c -> c.length() <= LONGEST && Chord.parse(c).isPresent()));
  }

  private void mistake(Word word, int root, int slash) {
    String text = word.text();
    boolean qualityKnown =
        slash >= 0 && ChordQuality.parse(text.substring(root, slash)).isPresent();
    if (slash == text.length() - 1) {
      problems.add(
          word.span().part(slash, slash + 1),
          "a slash right behind a chord",
          "Behind a slash stands the bass note: D/F#. One more beat is a / with a space before it.");
    } else if (qualityKnown) {
      noBass(word, slash);
    } else {
      unknownQuality(word, root, slash);
    }
  }

  private void noBass(Word word, int slash) {
    problems.add(
        word.span().part(slash + 1, word.text().length()),
        "\"" + Quote.of(word.text().substring(slash + 1)) + "\" is no bass note",
        "I was reading a chord over a bass note, such as D/F#.");
  }

  private void unknownQuality(Word word, int root, int slash) {
    String text = word.text();
    int end = slash < 0 ? text.length() : slash;
    String suffix = text.substring(root, end);
    Span place = word.span().part(root, end);
    problems.add(
        place,
        "unknown chord quality \"" + Quote.of(suffix) + "\"",
        "I was reading a chord and expected a quality such as maj7, m7 or 7.",
        Suggestion.nearest(suffix, QUALITIES)
            .map(s -> text.substring(0, root) + s + text.substring(end)));
  }
}

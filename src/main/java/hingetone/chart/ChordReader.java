package hingetone.chart;

import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.Word;
import hingetone.theory.Chord;
import hingetone.theory.ChordQuality;
import hingetone.theory.NoteName;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads a chord symbol, and says what is wrong with one that is none. */
final class ChordReader {
  private static final int LONGEST = 40;
  private static final List<String> SUFFIXES =
      ChordQuality.ALL.stream().map(ChordQuality::suffix).filter(s -> !s.isEmpty()).toList();
  private static final List<String> ALIASES =
      ChordQuality.ALL.stream().flatMap(q -> q.aliases().stream()).toList();

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
    int accidentals = root;
    while (accidentals < text.length() && isThirdAccidental(text, root, accidentals)) {
      accidentals++;
    }
    if (accidentals > root) {
      problems.add(
          word.span().part(0, accidentals),
          "more than two sharps or flats",
          "I read roots with up to two.");
      return Optional.empty();
    }
    int slash = text.lastIndexOf('/');
    Optional<Chord> chord = Chord.parse(text);
    if (chord.isEmpty()) {
      mistake(word, root, slash);
    }
    return chord;
  }

  /** Whether a sharp or flat stands behind a root that has two already. */
  private static boolean isThirdAccidental(String text, int root, int place) {
    return text.codePointCount(1, root) == 2 && "#♯b♭".indexOf(text.charAt(place)) >= 0;
  }

  private void noRoot(Word word, int root) {
    String text = word.text();
    if (text.length() > LONGEST) {
      problems.add(
          word.span(), "a chord symbol of " + text.length() + " characters", "Is it one chord?");
      return;
    }
    if (text.matches("[xX×][0-9]+|[0-9]+[xX×]")) {
      problems.add(
          word.span(),
          "\"" + text + "\" is not behind a repeat",
          "How often a repeat is played stands behind its end: |: Cm7 | F7 :| x3.");
      return;
    }
    String capital =
        text.substring(0, 1).toUpperCase(Locale.ROOT).replace('H', 'B') + text.substring(1);
    problems.add(
        word.span(),
        "\"" + Quote.of(text) + "\" is no chord",
        "I was reading a bar and expected a chord with its root as a capital letter, A to G, / or %.",
        Optional.of(capital)
            .filter(c -> root > 0 || c.startsWith("B"))
            .filter(ChordReader::isChord));
  }

  private static boolean isChord(String text) {
    return text.indexOf('/') < 0 && Chord.parse(text).isPresent();
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
        Suggestion.nearest(suffix, SUFFIXES)
            .or(() -> Suggestion.nearest(suffix, ALIASES))
            .map(s -> text.substring(0, root) + s + text.substring(end)));
  }
}

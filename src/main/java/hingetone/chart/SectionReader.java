package hingetone.chart;

import hingetone.text.Choice;
import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Span;
import hingetone.text.reading.WholeText;
import hingetone.text.reading.Word;
import hingetone.text.reading.Yaml;
import hingetone.theory.Key;
import hingetone.theory.ScaleType;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads the sections of a chart, but for what one section takes from another. */
final class SectionReader {
  private static final String EXACTLY = "exactly";
  private static final String RIFF_OF_EXPECTED =
      "I expected the name of a section, as in riff-of: low or riff-of: low exactly.";

  private static final String BARS_EXPECTED =
      "I expected the chords, bar by bar:\n  bars: |\n    | Cm7 | F7 | Cm7 | % |";
  private static final String KEY_EXPECTED =
      "I expected a tonic and one of "
          + Key.MODES.stream().map(ScaleType::name).collect(Collectors.joining(", "))
          + ". For example: key: C minor.";
  private static final String LEAVE_EXPECTED =
      "I expected run, hold or either, one for each time the section is left: leave: run, hold.";
  private static final String PHRASES_EXPECTED =
      "I expected statement, reply or rest, each with its bars, and commas between:\n"
          + "  phrases: statement 2, reply 2, statement 2 again, rest 2";

  private static final int MOST_WORDS = 12;

  private final Problems problems;
  private final SectionDefaults shared;
  private int barsLeft = ChartReader.MOST_BARS;

  SectionReader(Problems problems, SectionDefaults shared) {
    this.problems = problems;
    this.shared = shared;
  }

  /**
   * A section as far as it can be read by itself.
   *
   * @param riffOf the section whose riff it plays
   */
  record Draft(Section section, Optional<RiffOf> riffOf) {}

  /**
   * Another section's riff.
   *
   * @param name the section's name
   * @param exactly whether each note keeps its distance from the others
   */
  record RiffOf(Word name, boolean exactly) {}

  /** Reads one section; empty when a problem kept it from being one. */
  Optional<Draft> read(String name, Yaml.Entry entry) {
    if (!(entry.value() instanceof Yaml.Mapping mapping)) {
      problems.add(
          entry.key().span(),
          "section \"" + Quote.of(name) + "\" has " + entry.value().kind() + " in it",
          "I expected at least its key and its bars.");
      return Optional.empty();
    }
    Fields fields = new Fields(problems, mapping, ChartKey.table(ChartKey.Place.SECTION));
    SectionDefaults own = shared.overriddenBy(fields);
    Optional<Key> key = key(name, entry, fields);
    List<ChartBar> bars = bars(name, entry, fields, own.meter());
    List<PhraseTurn> phrases = phrases(fields);
    List<Leave> leave = leave(fields);
    Optional<Riff> riff = new RiffReader(problems, own.meter(), bars.size()).read(fields);
    Optional<RiffOf> riffOf = riffOf(fields);
    if (key.isEmpty() || bars.isEmpty() || own.meter().isEmpty()) {
      return Optional.empty();
    }
    Section section =
        new Section(
            name,
            key.get(),
            own.meter().get(),
            own.tempo(),
            own.groove(),
            own.band(),
            own.swing(),
            bars,
            phrases,
            own.pickup(),
            leave,
            riff);
    return Optional.of(new Draft(section, riffOf));
  }

  private Optional<RiffOf> riffOf(Fields fields) {
    List<Word> words = fields.words(ChartKey.RIFF_OF, RIFF_OF_EXPECTED);
    if (!words.isEmpty() && fields.has(ChartKey.RIFF)) {
      problems.add(
          fields.place(ChartKey.RIFF_OF),
          "both riff and riff-of",
          "A section plays its own riff or another section's; leave out one of the two.");
      return Optional.empty();
    }
    if (words.size() > 2 || words.size() == 2 && !words.get(1).text().equals(EXACTLY)) {
      Word wrong = words.get(1);
      problems.add(
          wrong.span(),
          "\"" + Quote.of(wrong.text()) + "\" after the section's name",
          RIFF_OF_EXPECTED,
          Suggestion.nearest(wrong.text(), List.of(EXACTLY)));
      return Optional.empty();
    }
    return words.stream().findFirst().map(name -> new RiffOf(name, words.size() == 2));
  }

  private Optional<Key> key(String name, Yaml.Entry entry, Fields fields) {
    if (!fields.has(ChartKey.KEY)) {
      missing(ChartKey.KEY, name, entry.key().span(), KEY_EXPECTED);
    }
    return fields.read(
        ChartKey.KEY,
        text -> Values.key(text).map(Optional::of),
        Optional.empty(),
        ValueGuess::key,
        KEY_EXPECTED);
  }

  private void missing(ChartKey key, String section, Span place, String expected) {
    problems.add(place, "section \"" + Quote.of(section) + "\" has no " + key, expected);
  }

  private List<ChartBar> bars(String name, Yaml.Entry entry, Fields fields, Optional<Meter> meter) {
    Optional<Yaml> value = fields.value(ChartKey.BARS);
    if (value.isEmpty()) {
      missing(ChartKey.BARS, name, entry.key().span(), BARS_EXPECTED);
      return List.of();
    }
    Span place = fields.place(ChartKey.BARS);
    Span line = problems.source().spanOfLine(problems.source().lineOf(place.start()));
    if (problems.anyIn(line)) {
      return List.of();
    }
    Optional<Yaml.Text> text = fields.text(ChartKey.BARS, BARS_EXPECTED);
    if (text.isEmpty()) {
      return List.of();
    }
    List<ChartBar> bars = new BarsReader(problems, meter, barsLeft).read(text.get().inner());
    barsLeft -= bars.size();
    if (bars.isEmpty() && !problems.anyIn(text.get().inner())) {
      problems.add(place, "\"bars\" has no bars", BARS_EXPECTED);
    }
    return bars;
  }

  private List<Leave> leave(Fields fields) {
    List<Leave> ways = new ArrayList<>();
    for (Word word : fields.words(ChartKey.LEAVE, LEAVE_EXPECTED)) {
      Choice.named(Leave.values(), word.text())
          .ifPresentOrElse(
              ways::add,
              () ->
                  problems.add(
                      word.span(),
                      "\"" + Quote.of(word.text()) + "\" is no way to leave a section",
                      LEAVE_EXPECTED,
                      Suggestion.nearest(word.text(), Choice.words(Leave.values()))));
    }
    return ways;
  }

  private List<PhraseTurn> phrases(Fields fields) {
    List<PhraseTurn> turns = new ArrayList<>();
    for (Word phrase : fields.phrases(ChartKey.PHRASES, PHRASES_EXPECTED)) {
      turn(phrase)
          .ifPresentOrElse(
              turns::add,
              () ->
                  problems.add(
                      phrase.span(),
                      "\"" + Quote.of(phrase.text()) + "\" is no phrase",
                      PHRASES_EXPECTED,
                      meant(phrase.text())));
    }
    return turns;
  }

  private static Optional<PhraseTurn> turn(Word phrase) {
    String[] words = phrase.text().split("\\s+");
    boolean again = words.length == 3 && words[2].equalsIgnoreCase("again");
    if (words.length < 2 || words.length > 2 && !again) {
      return Optional.empty();
    }
    return PhraseTurn.Role.named(words[0])
        .filter(role -> !again || role == PhraseTurn.Role.STATEMENT)
        .flatMap(
            role ->
                WholeText.read(words[1], "", 1, 99).map(bars -> new PhraseTurn(role, bars, again)));
  }

  /** The same phrase with its words mended, turned, filled up or parted, where that helps. */
  private static Optional<String> meant(String phrase) {
    List<String> known = new ArrayList<>(Choice.words(PhraseTurn.Role.values()));
    known.add("again");
    String mended =
        Arrays.stream(phrase.split("[\\s:]+"))
            .limit(MOST_WORDS)
            .map(word -> Suggestion.nearest(word, known).orElse(word))
            .collect(Collectors.joining(" "));
    String parted = mended.replaceAll(" (?=(statement|reply|rest)\\b)", ", ");
    return Stream.of(
            mended,
            parted,
            mended + " 2",
            mended.replaceFirst("^([0-9]+) (\\w+)", "$2 $1"),
            mended.replaceFirst("^(reply|rest) ([0-9]+) again", "$1 $2"))
        .filter(SectionReader::arePhrases)
        .findFirst();
  }

  private static boolean arePhrases(String text) {
    return Arrays.stream(text.split(", "))
        .allMatch(phrase -> turn(new Word(phrase, new Span(0, 0))).isPresent());
  }
}

package hingetone.phrase;

import hingetone.notation.NoteText;
import hingetone.text.Choice;
import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Yaml;
import hingetone.theory.Key;
import hingetone.time.Meter;
import hingetone.time.TempoRange;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads files of phrases. The format is specified in {@code src/docs/phrases.md}. */
public final class PhraseReader {
  private static final String HELP =
      "The page on phrases says what a file needs: src/docs/phrases.md.";
  private static final String NOTES =
      "I expected notes with a | where it lands, as in notes: E4i G4i A4i | C5q. A4i G4h.";
  private static final int MOST = 1000;

  private final Problems problems;
  private boolean keyStands;

  private PhraseReader(Problems problems) {
    this.problems = problems;
  }

  /** What holds for a statement that does not say it itself. */
  private record Usual(OffBeats feel, Meter meter, TempoRange tempo, Optional<Key> key) {}

  /** Whether a document looks like a file of phrases rather than a chart. */
  public static boolean isPhrases(Yaml document) {
    return document instanceof Yaml.Mapping mapping && mapping.entry("statements").isPresent();
  }

  /** Reads a file of phrases: its statements, or every problem in it. Never throws. */
  public static Reading<List<Statement>> read(Source source) {
    Problems problems = new Problems(source);
    List<Statement> statements =
        Yaml.read(problems).map(new PhraseReader(problems)::statements).orElse(List.of());
    return problems.reading(() -> statements);
  }

  private List<Statement> statements(Yaml yaml) {
    if (!(yaml instanceof Yaml.Mapping mapping)) {
      problems.add(
          yaml.span(), "this is no file of phrases", "I expected statements: and names below it.");
      return List.of();
    }
    Fields file = new Fields(problems, mapping, PhraseKey.table(PhraseKey.Place.FILE));
    file.read(PhraseKey.ABOUT, Optional::of, "", "I expected a line that says what it is.");
    Usual none = new Usual(OffBeats.EITHER, Meter.COMMON, TempoRange.ANY, Optional.empty());
    Usual usual = usual(file, none);
    keyStands = file.has(PhraseKey.KEY);
    if (!file.has(PhraseKey.STATEMENTS)) {
      file.missing(PhraseKey.STATEMENTS, HELP);
    }
    List<Yaml.Entry> entries =
        file.entries(PhraseKey.STATEMENTS, "I expected names, each with notes below it.");
    if (entries.size() > MOST) {
      problems.add(
          entries.get(MOST).key().span(), "too many statements", "A file has at most 1000.");
      return List.of();
    }
    return entries.stream().flatMap(entry -> statement(entry, usual).stream()).toList();
  }

  private Usual usual(Fields fields, Usual above) {
    List<String> feels = Choice.words(OffBeats.values());
    return new Usual(
        fields.read(
            PhraseKey.FEEL,
            text -> Choice.named(OffBeats.values(), text),
            above.feel,
            text -> Suggestion.nearest(text, feels),
            "I expected one of: " + String.join(", ", feels) + "."),
        fields.read(
            PhraseKey.METER, Meter::parse, above.meter, "I expected one meter, as in meter: 6/8."),
        fields.read(
            PhraseKey.TEMPO,
            TempoRange::parse,
            above.tempo,
            "I expected the slowest and the fastest tempo, as in tempo: 90-150."),
        fields.read(
            PhraseKey.KEY,
            text -> Key.parse(text).map(Optional::of),
            above.key,
            text -> Suggestion.nearest(text, keys()),
            "I expected a tonic and major, minor, blues or a mode, as in key: C minor."));
  }

  private static List<String> keys() {
    return Stream.of("C", "G", "D", "A", "E", "B", "F", "Bb", "Eb", "Ab", "Db", "F#")
        .flatMap(tonic -> Key.MODES.stream().map(mode -> tonic + " " + mode))
        .toList();
  }

  private Optional<Statement> statement(Yaml.Entry entry, Usual above) {
    String name = entry.key().value();
    if (!(entry.value() instanceof Yaml.Mapping mapping)) {
      problems.add(
          entry.value().span(),
          "\"" + Quote.of(name) + "\" cannot be " + entry.value().kind(),
          NOTES);
      return Optional.empty();
    }
    Fields fields = new Fields(problems, mapping, PhraseKey.table(PhraseKey.Place.STATEMENT));
    Usual own = usual(fields, above);
    if (own.key.isEmpty() && !keyStands && !fields.has(PhraseKey.KEY)) {
      problems.add(
          entry.key().span(),
          "\"" + Quote.of(name) + "\" has no key",
          "Give it one, or one for all at the top of the file, as in key: C minor.");
    }
    if (!fields.has(PhraseKey.NOTES)) {
      fields.missing(PhraseKey.NOTES, HELP);
    }
    Optional<Phrase> phrase =
        fields.text(PhraseKey.NOTES, NOTES).flatMap(notes -> phrase(notes, own));
    return phrase.map(
        notes ->
            new Statement(
                name, own.feel, own.meter, own.tempo.slowest(), own.tempo.fastest(), notes));
  }

  private Optional<Phrase> phrase(Yaml.Text text, Usual own) {
    Reading<NoteText> reading = NoteText.read(problems.source(), text.inner());
    problems.addAll(reading.problems());
    if (reading.value().isEmpty() || own.key.isEmpty()) {
      return Optional.empty();
    }
    Key key = own.key.get();
    WrittenPhrase written = new WrittenPhrase(problems, text, reading.value().get(), own.meter);
    return written.isSound() ? Optional.of(written.phrase(key)) : Optional.empty();
  }
}

package hingetone.chart;

import hingetone.neck.Tuning;
import hingetone.text.Choice;
import hingetone.text.Quote;
import hingetone.text.Suggestion;
import hingetone.text.reading.Fields;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.text.reading.TextFile;
import hingetone.text.reading.WholeText;
import hingetone.text.reading.Word;
import hingetone.text.reading.Yaml;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads charts. The format is specified in {@code src/docs/charts.md}.
 *
 * <pre>{@code
 * Reading<Chart> reading = ChartReader.readFile("demo-charts/two-up.yaml");
 * reading.problems().forEach(problem -> System.err.println(problem.report()));
 * }</pre>
 */
public final class ChartReader {
  /** The most bars that all sections together, and a lap of the form, may have. */
  public static final int MOST_BARS = 20_000;

  private static final List<String> INSTRUMENTS = List.of("guitar", "bass");
  private static final String SECTIONS_EXPECTED =
      "I expected the sections, each under its name:\n"
          + "  sections:\n    low:\n      key: C minor\n      bars: |\n        | Cm7 | F7 |";

  private final Problems problems;
  private final Map<String, Optional<SectionReader.Draft>> drafts = new LinkedHashMap<>();

  private ChartReader(Problems problems) {
    this.problems = problems;
  }

  /** Reads the chart in a file, or in standard input for {@code -}. Never throws. */
  public static Reading<Chart> readFile(String name) {
    return TextFile.read(name).then(ChartReader::read);
  }

  /** Reads a chart: the chart, or every problem in it. Never throws. */
  public static Reading<Chart> read(Source source) {
    Problems problems = new Problems(source);
    Optional<Chart> chart = Yaml.read(problems).flatMap(new ChartReader(problems)::chart);
    return problems.reading(chart::orElseThrow);
  }

  private Optional<Chart> chart(Yaml yaml) {
    if (!(yaml instanceof Yaml.Mapping mapping)) {
      problems.add(yaml.span(), "this is no chart", SECTIONS_EXPECTED);
      return Optional.empty();
    }
    Fields fields = new Fields(problems, mapping, ChartKey.table(ChartKey.Place.CHART));
    String title =
        inOneLine(fields.read(ChartKey.TITLE, Optional::of, usualTitle(), "I expected a title."));
    int countIn = whole(fields, ChartKey.COUNT_IN, 8, 1, "I expected a number of bars, 0 to 8.");
    int capo = whole(fields, ChartKey.CAPO, 12, 0, "I expected a fret, 0 to 12.");
    Optional<Integer> position =
        fields.read(
            ChartKey.POSITION,
            text -> WholeText.read(text, "", 1, Chart.HIGHEST_POSITION).map(Optional::of),
            Optional.empty(),
            ValueGuess::number,
            "I expected a fret, 1 to " + Chart.HIGHEST_POSITION + ".");
    Fluency fluency =
        fields.read(
            ChartKey.FLUENCY,
            text -> Choice.named(Fluency.values(), text),
            Fluency.NORMAL,
            ValueGuess.oneOf(Choice.words(Fluency.values())),
            "I expected easy, normal or fast.");
    long seed =
        fields.read(
            ChartKey.SEED, Chart::parseSeed, 1L, "I expected a whole number of at most 18 digits.");
    String instrument = instrument(fields);
    Tuning tuning = tuning(fields, instrument);
    readDrafts(fields);
    Map<String, Section> sections = sections();
    List<Section> form = form(fields, sections);
    if (!problems.isEmpty()) {
      return Optional.empty();
    }
    List<Section> all = List.copyOf(sections.values());
    return Optional.of(
        new Chart(title, all, form, countIn, instrument, tuning, capo, position, fluency, seed));
  }

  private static int whole(Fields fields, ChartKey key, int most, int usual, String expected) {
    return fields.read(
        key, text -> WholeText.read(text, "", 0, most), usual, ValueGuess::number, expected);
  }

  private static String inOneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private String usualTitle() {
    String name = problems.source().name();
    String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return file.replaceFirst("\\.ya?ml$", "");
  }

  private String instrument(Fields fields) {
    return fields.read(
        ChartKey.INSTRUMENT,
        text -> INSTRUMENTS.stream().filter(text::equalsIgnoreCase).findFirst(),
        INSTRUMENTS.get(0),
        ValueGuess.oneOf(INSTRUMENTS),
        "I expected guitar or bass. Any other fretted instrument: leave this out, give its tuning.");
  }

  private Tuning tuning(Fields fields, String instrument) {
    List<String> known = Tuning.NAMED.stream().map(Tuning::name).toList();
    fields.joinList(ChartKey.TUNING);
    return fields.read(
        ChartKey.TUNING,
        Tuning::parse,
        instrument.equals("bass") ? Tuning.parse("bass").orElseThrow() : Tuning.STANDARD,
        ValueGuess.oneOf(known),
        "I expected the open strings from low to high, such as D A D G A D or D2 A2 D3 G3 A3 D4, or "
            + String.join(", ", known)
            + ".");
  }

  private void readDrafts(Fields fields) {
    SectionReader reader = new SectionReader(problems, SectionDefaults.of(fields));
    Optional<Yaml.Mapping> named = fields.mapping(ChartKey.SECTIONS, SECTIONS_EXPECTED);
    if (!fields.has(ChartKey.SECTIONS)) {
      problems.add(new Span(0, 0), "no sections", SECTIONS_EXPECTED);
    }
    for (Yaml.Entry entry : named.map(Yaml.Mapping::entries).orElse(List.of())) {
      String name = entry.key().value();
      if (!name.matches("[^\\s,]{1,40}")) {
        problems.add(
            entry.key().span(),
            "\"" + Quote.of(name) + "\" cannot name a section",
            "A section's name is one word, so that the form can list them.",
            Optional.of(name.strip().replaceAll("[\\s,]+", "-")).filter(n -> n.length() <= 40));
      }
      drafts.put(name, reader.read(name, entry));
    }
    if (named.isPresent() && drafts.isEmpty()) {
      problems.add(named.get().span(), "no sections", SECTIONS_EXPECTED);
    }
  }

  /** The sections that could be read, each with the riff it takes from another. */
  private Map<String, Section> sections() {
    Map<String, Section> sections = new LinkedHashMap<>();
    for (Optional<SectionReader.Draft> draft : drafts.values()) {
      draft.ifPresent(d -> sections.put(d.section().name(), withRiffOf(d)));
    }
    return sections;
  }

  private Section withRiffOf(SectionReader.Draft draft) {
    Section section = draft.section();
    if (draft.riffOf().isEmpty()) {
      return section;
    }
    Word name = draft.riffOf().get().name();
    if (!drafts.containsKey(name.text())) {
      noSuchSection(name);
    }
    Optional<Section> other =
        drafts.getOrDefault(name.text(), Optional.empty()).map(SectionReader.Draft::section);
    if (other.isPresent() && other.get().riff().isEmpty()) {
      problems.add(
          name.span(),
          "section \"" + Quote.of(name.text()) + "\" has no riff of its own",
          "Name the section that has the riff: keys in it.");
      return section;
    }
    boolean exactly = draft.riffOf().get().exactly();
    return other
        .filter(o -> fits(o.riff().orElseThrow(), section, name))
        .map(o -> section.withRiff(moved(o, section, exactly)))
        .orElse(section);
  }

  private static Riff moved(Section from, Section to, boolean exactly) {
    Riff riff = from.riff().orElseThrow();
    return exactly ? riff.transposed(from.key(), to.key()) : riff.of(from, to);
  }

  private boolean fits(Riff riff, Section section, Word name) {
    Beats bar = section.meter().barLength();
    boolean whole =
        riff.bassLength().modulo(bar).isZero() && riff.chordsLength().modulo(bar).isZero();
    if (!whole) {
      problems.add(
          name.span(),
          "the riff of \"" + Quote.of(name.text()) + "\" is not whole bars here",
          "This section is in " + section.meter() + "; give it a riff of its own.");
    }
    return whole;
  }

  private void noSuchSection(Word name) {
    problems.add(
        name.span(),
        "no section is called \"" + Quote.of(name.text()) + "\"",
        "The sections are " + Quote.of(String.join(", ", drafts.keySet())) + ".",
        Suggestion.nearest(name.text(), drafts.keySet()));
  }

  private List<Section> form(Fields fields, Map<String, Section> sections) {
    if (!fields.has(ChartKey.FORM)) {
      return List.copyOf(sections.values());
    }
    String expected = "I expected the sections in playing order: form: low high low.";
    List<Section> form = new ArrayList<>();
    int bars = 0;
    for (Word word : fields.words(ChartKey.FORM, expected)) {
      if (!drafts.containsKey(word.text()) && !drafts.isEmpty()) {
        noSuchSection(word);
      } else if (sections.containsKey(word.text())) {
        form.add(sections.get(word.text()));
        bars += sections.get(word.text()).bars().size();
      }
      if (bars > MOST_BARS) {
        problems.add(
            word.span(),
            "more than " + MOST_BARS + " bars in the form",
            "Make the form one lap: it comes round again by itself.");
        return form;
      }
    }
    return form;
  }
}

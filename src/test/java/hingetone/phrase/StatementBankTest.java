package hingetone.phrase;

import static hingetone.plan.PlanCharts.section;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.Tuning;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.phrase.maker.PhraseMakerTest;
import hingetone.plan.Plan;
import hingetone.plan.PlanCharts;
import hingetone.text.OddFiles;
import hingetone.text.Page;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import hingetone.theory.Scale;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StatementBankTest {
  private static final int ALL = 139;

  /** Of the tonic's octave what a blues has beside the minor scale: 2 3 b5 6. Common practice. */
  private static final Set<Integer> BLUE = Set.of(2, 4, 6, 9);

  private static final List<Statement> STATEMENTS =
      StatementBank.builtIn().read().value().orElseThrow();

  @Test
  void more_than_a_hundred_statements_in_several_feels_and_meters_all_different()
      throws IOException {
    assertThat(STATEMENTS).hasSize(ALL);
    assertThat(STATEMENTS.stream().filter(s -> s.phrase().key().isBlues())).hasSizeGreaterThan(20);
    assertThat(STATEMENTS).extracting(Statement::name).doesNotHaveDuplicates();
    assertThat(STATEMENTS).extracting(s -> s.phrase().tones()).doesNotHaveDuplicates();
    assertThat(STATEMENTS).extracting(Statement::feel).contains(OffBeats.values());
    assertThat(STATEMENTS)
        .extracting(s -> s.meter().toString())
        .contains("4/4", "3/4", "5/4", "6/8", "7/8", "12/8");
    try (Stream<Path> files = Files.list(Path.of("src/main/resources/phrases"))) {
      assertThat(files.map(f -> f.getFileName().toString().replace(".yaml", "")))
          .containsExactlyInAnyOrderElementsOf(StatementBank.BUILT_IN);
    }
  }

  /** Common practice, as in {@link PhraseMakerTest}: in the scale, or passed through by step. */
  @Test
  void every_statement_keeps_to_its_key_lies_under_one_hand_and_stays_open() {
    for (Statement statement : STATEMENTS) {
      Phrase phrase = statement.phrase();
      List<Tone> tones = phrase.tones();
      Scale scale = phrase.key().heptatonic();
      for (int i = 0; i < tones.size(); i++) {
        boolean passing =
            i > 0
                && i + 1 < tones.size()
                && Math.abs(moved(tones, i)) <= 2
                && Math.abs(moved(tones, i + 1)) <= 2;
        int degree = Math.floorMod(tones.get(i).pitch().midi() - phrase.key().tonic().chroma(), 12);
        boolean blue = phrase.key().isBlues() && BLUE.contains(degree);
        assertThat(passing || blue || scale.contains(tones.get(i).pitch().name()))
            .as("%s note %d", statement.name(), i + 1)
            .isTrue();
      }
      assertThat(isOnePosition(tones)).as(statement.name()).isTrue();
      assertThat(tones.get(tones.size() - 1).pitch().name())
          .as(statement.name())
          .isNotEqualTo(phrase.key().tonic());
      assertThat(phrase.start().isNegative()).as(statement.name()).isTrue();
      assertThat(phrase.landing().end().isPositive()).as(statement.name()).isTrue();
    }
  }

  private static int moved(List<Tone> tones, int i) {
    return tones.get(i).pitch().midi() - tones.get(i - 1).pitch().midi();
  }

  /** Some five frets of a guitar in standard tuning hold all notes. */
  private static boolean isOnePosition(List<Tone> tones) {
    List<Integer> open = List.of(40, 45, 50, 55, 59, 64);
    return IntStream.rangeClosed(0, 15)
        .anyMatch(
            low ->
                tones.stream()
                    .map(tone -> tone.pitch().midi())
                    .allMatch(
                        midi ->
                            open.stream().anyMatch(o -> midi - o >= low && midi - o <= low + 4)));
  }

  /** Each is found by the maker where its meter, feel, tempo and kind of key are asked for. */
  @Test
  void every_statement_is_played_where_it_fits() {
    for (Statement statement : STATEMENTS) {
      boolean minor = statement.phrase().key().isMinor();
      boolean blues = statement.phrase().key().isBlues();
      String chord = blues ? "E7" : minor ? "Em7" : "Gmaj7";
      String chords = String.join(" ", Collections.nCopies(6, chord));
      String meter = statement.meter().toString();
      String key = blues ? "E blues" : minor ? "E minor" : "G major";
      Section section = section("low", key, meter, chords, "statement 3, reply 3");
      for (int bpm : List.of(statement.slowest(), statement.fastest())) {
        Chart chart = PlanCharts.chart(1, section).withTempo(Tempo.of(bpm));
        assertThat(timesPlayed(chart, statement))
            .as("%s at %d", statement.name(), bpm)
            .isPositive();
      }
    }
  }

  private static int timesPlayed(Chart chart, Statement statement) {
    Form form = Form.of(chart);
    Ground ground = Ground.of(form, Fretboard.of(Tuning.STANDARD, 0));
    int times = 0;
    for (long seed = 1; seed <= 12; seed++) {
      Plan plan = Plan.of(chart.withSeed(seed), form);
      PhraseMaker maker =
          PhraseMaker.of(plan, ground, seed)
              .withBank(List.of(statement), s -> statement.feel() == OffBeats.SWUNG);
      MadePhrase made = maker.make(plan.prompt(1));
      Matcher m = Pattern.compile("^Plays \"(.*)\" from the bank(.*), left").matcher(made.why());
      if (m.find()) {
        times++;
        assertThat(m.group(1)).isEqualTo(statement.name());
        keepsItsRhythm(statement, m.group(2), made.phrase());
      }
    }
    return times;
  }

  @Test
  void in_another_meter_feel_pace_or_kind_of_key_it_is_not_played() {
    Statement straight =
        STATEMENTS.stream().filter(s -> s.name().equals("gate-latch")).findFirst().orElseThrow();
    String six = "Em7 Em7 Em7 Em7 Em7 Em7";
    Section fits = section("low", "E minor", "4/4", six, "statement 3, reply 3");
    Section major = section("low", "E major", "4/4", six, "statement 3, reply 3");
    Section threes = section("low", "E minor", "3/4", six, "statement 3, reply 3");
    assertThat(timesPlayed(PlanCharts.chart(1, fits), straight)).isPositive();
    assertThat(timesPlayed(PlanCharts.chart(1, major), straight)).isZero();
    assertThat(timesPlayed(PlanCharts.chart(1, threes), straight)).isZero();
    assertThat(timesPlayed(PlanCharts.chart(1, fits).withTempo(Tempo.of(300)), straight)).isZero();
    assertThat(OffBeats.SWUNG.fits(false)).isFalse();
    assertThat(OffBeats.STRAIGHT.fits(true)).isFalse();
    assertThat(OffBeats.EITHER.fits(true)).isTrue();
    assertThat(OffBeats.EITHER.fits(false)).isTrue();
  }

  /** The rhythm of a statement is as written, with fewer or more notes where the sentence says. */
  private static void keepsItsRhythm(Statement statement, String how, Phrase played) {
    String name = statement.name();
    Phrase written = statement.phrase();
    List<Beats> before = written.tones().stream().map(Tone::onset).toList();
    List<Beats> after = played.tones().stream().map(Tone::onset).toList();
    if (how.contains("thinned") || how.contains("cut short")) {
      assertThat(before).as(name).containsAll(after);
    } else if (how.contains("thickened")) {
      assertThat(after).as(name).containsAll(before);
    } else {
      assertThat(after).as(name).isEqualTo(before);
    }
  }

  @Test
  void a_file_of_the_players_folder_overrides_and_adds(@TempDir Path folder) throws IOException {
    String text = "key: D minor\nstatements:\n  my-own: {notes: C5i D5i | F5q C5q}\n";
    Files.writeString(folder.resolve("odd.yaml"), text);
    Files.writeString(folder.resolve("mine.yaml"), text);
    List<Statement> all = StatementBank.builtIn().withFolder(folder).read().value().orElseThrow();
    assertThat(all).hasSize(ALL - 15 + 2);
    assertThat(all).extracting(Statement::name).contains("my-own").doesNotContain("five-stones");
    assertThat(
            StatementBank.builtIn().withFolder(folder.resolve("none")).read().value().orElseThrow())
        .hasSize(ALL);
  }

  @Test
  void what_is_wrong_in_the_players_folder_is_reported_with_its_file(@TempDir Path folder)
      throws IOException {
    Files.writeString(folder.resolve("mine.yaml"), "key: D minor\nstatements:\n  a: {notes: C4}\n");
    Reading<List<Statement>> reading = StatementBank.builtIn().withFolder(folder).read();
    assertThat(reading.problems())
        .extracting(Diagnostic::report)
        .singleElement()
        .asString()
        .contains("mine.yaml:3:14: \"C4\" has no length");
  }

  @Test
  void what_is_no_file_in_the_players_folder_is_reported_and_what_an_editor_hides_is_not(
      @TempDir Path folder) throws Exception {
    Files.createSymbolicLink(folder.resolve("gone.yaml"), folder.resolve("nowhere"));
    Files.createSymbolicLink(folder.resolve(".#mine.yaml"), folder.resolve("nowhere"));
    Files.createDirectory(folder.resolve("nest.yaml"));
    OddFiles.pipe(folder.resolve("pipe.yaml"));
    Reading<List<Statement>> reading = StatementBank.builtIn().withFolder(folder).read();
    assertThat(reading.problems())
        .extracting(Diagnostic::message)
        .containsExactly("there is no such file", "this is a folder", "this is no regular file");
  }

  @Test
  void a_players_folder_that_cannot_be_opened_is_not_passed_over(@TempDir Path folder)
      throws IOException {
    Path closed = OddFiles.closedFolder(folder.resolve("phrases"));
    assertThatThrownBy(() -> StatementBank.builtIn().withFolder(closed))
        .isInstanceOf(IOException.class);
    Path file = Files.createFile(folder.resolve("file"));
    assertThat(StatementBank.builtIn().withFolder(file.resolve("phrases")))
        .isEqualTo(StatementBank.builtIn());
  }

  @Test
  void the_landing_is_the_first_bar_line_and_what_stands_before_it_is_the_pickup() {
    Source source =
        new Source("t", "key: D minor\nstatements:\n  a: {notes: C5i D5i- | D5-q F5q | G5h}\n");
    assertThat(PhraseReader.read(source).problems()).hasSize(1);
    Source whole =
        new Source("t", "key: D minor\nstatements:\n  a: {notes: C5i D5i- | D5-h F5h | G5h}\n");
    Phrase phrase = PhraseReader.read(whole).value().orElseThrow().get(0).phrase();
    assertThat(phrase.start()).isEqualTo(Beats.of(-1));
    assertThat(phrase.landing().onset()).isEqualTo(Beats.of(-1, 2));
    assertThat(phrase.end()).isEqualTo(Beats.of(6));
    assertThat(phrase.key()).isEqualTo(Key.parse("D minor").orElseThrow());
  }

  @Test
  void the_examples_of_the_format_page_are_read() throws IOException {
    List<String> examples = Page.examples(Path.of("src/docs/phrases.md"));
    for (String example : examples) {
      Reading<List<Statement>> reading = PhraseReader.read(new Source("page", example));
      assertThat(reading.problems()).extracting(Diagnostic::report).isEmpty();
    }
    assertThat(examples).hasSize(2);
  }
}

package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.PhraseTurn.Role;
import hingetone.neck.Tuning;
import hingetone.score.Fullness;
import hingetone.score.Note;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartReaderTest {
  private static Chart read(String text) {
    Reading<Chart> reading = ChartReader.read(new Source("test.yaml", text));
    assertThat(reading.problems().stream().map(Diagnostic::report)).isEmpty();
    return reading.value().orElseThrow();
  }

  private static Section section(String extra, String bars) {
    return read("sections:\n  low:\n    key: C minor\n"
            + extra
            + "    bars: |\n      "
            + bars
            + "\n")
        .form()
        .get(0);
  }

  /** Bars as {@code Cm7@1:2 F7@3:2 | ...}: chord, beat and beats. */
  private static String drawn(Section section) {
    return section.bars().stream()
        .map(
            bar ->
                bar.chords().stream()
                    .map(s -> s.chord().map(c -> c.symbol()).orElse("N.C.") + at(s))
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining(" | "));
  }

  private static String at(ChartBar.Slot slot) {
    return "@" + slot.beat() + ":" + slot.beats();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "4/4; | Cm7 |; Cm7@1:4",
        "4/4; | Cm7 F7 |; Cm7@1:2 F7@3:2",
        "4/4; | Cm7 F7 G C |; Cm7@1:1 F7@2:1 G@3:1 C@4:1",
        "4/4; | Cm7 / / G |; Cm7@1:3 G@4:1",
        "4/4; | Cm7 | % | % |; Cm7@1:4 | Cm7@1:4 | Cm7@1:4",
        "4/4; | Cm7 / F7 / | % |; Cm7@1:2 F7@3:2 | Cm7@1:2 F7@3:2",
        "4/4; | N.C. | Cm7 |; N.C.@1:4 | Cm7@1:4",
        "4/4; |: Cm7 | F7 :|; Cm7@1:4 | F7@1:4 | Cm7@1:4 | F7@1:4",
        "4/4; |: Cm7 :| x3; Cm7@1:4 | Cm7@1:4 | Cm7@1:4",
        "4/4; | G |: Cm7 :| C |; G@1:4 | Cm7@1:4 | Cm7@1:4 | C@1:4",
        "4/4; | D/F# | C/G |; D/F#@1:4 | C/G@1:4",
        "3/4; | Cm7 F7 G |; Cm7@1:1 F7@2:1 G@3:1",
        "12/8; | Cm7 F7 |; Cm7@1:2 F7@3:2",
        "5/4; | Cm7 / / F7 / |; Cm7@1:3 F7@4:2",
        "7/8; | Cm7 / / / F7 / / |; Cm7@1:4 F7@5:3",
        "6/8; | Cm7 F7 |; Cm7@1:1 F7@2:1",
        "4/4; | Bbmaj7 | Ebm7b5 | F#°7 |; Bbmaj7@1:4 | Ebm7b5@1:4 | F#dim7@1:4",
      })
  void bars_are_read_as_they_are_written(String meter, String bars, String expected) {
    assertThat(drawn(section("    meter: " + meter + "\n", bars))).isEqualTo(expected);
  }

  @Test
  void what_is_not_said_is_as_usual() {
    Section section = section("", "| Cm7 |");
    assertThat(section.tempo()).isEqualTo(Tempo.of(100));
    assertThat(section.meter()).isEqualTo(Meter.COMMON);
    assertThat(section.groove()).isEmpty();
    assertThat(section.band()).isEqualTo(Fullness.NORMAL);
    assertThat(section.swing()).isEmpty();
    assertThat(section.phrases()).isEmpty();
    assertThat(section.leave()).isEmpty();
    assertThat(section.pickup()).isEqualTo(Beats.of(3, 2));
    Chart chart = read("sections:\n  low:\n    key: C minor\n    bars: |\n      | Cm7 |\n");
    assertThat(chart.countIn()).isEqualTo(1);
    assertThat(chart.seed()).isEqualTo(1);
    assertThat(chart.capo()).isZero();
    assertThat(chart.tuning()).isEqualTo(Tuning.STANDARD);
  }

  @Test
  void a_section_may_say_otherwise_than_the_chart() {
    Chart chart =
        read(
            """
            tempo: 90
            meter: 3/4
            groove: plain
            band: light
            swing: 60%
            pickup: 1
            sections:
              low:
                key: Eb minor
                bars: |
                  | Ebm7 |
              high:
                key: Bb minor
                tempo: 120.5
                meter: 7/8
                grouping: 3+2+2
                groove: gravel-road
                band: full
                swing: 55%
                pickup: 2
                bars: |
                  | Bbm7 |
            """);
    Section low = chart.form().get(0);
    Section high = chart.form().get(1);
    assertThat(low.meter()).isEqualTo(Meter.of(3, 4));
    assertThat(low.tempo()).isEqualTo(Tempo.of(90));
    assertThat(low.band()).isEqualTo(Fullness.LIGHT);
    assertThat(low.swing()).contains(60);
    assertThat(low.pickup()).isEqualTo(Beats.ONE);
    assertThat(high.meter()).isEqualTo(Meter.of(7, 8).withGrouping(3, 2, 2));
    assertThat(high.tempo()).hasToString("120.5");
    assertThat(high.groove()).contains("gravel-road");
    assertThat(high.band()).isEqualTo(Fullness.FULL);
    assertThat(high.swing()).contains(55);
    assertThat(high.pickup()).isEqualTo(Beats.of(2));
  }

  @Test
  void words_in_a_line_and_a_list_are_the_same() {
    String sections =
        """
        sections:
          low:
            key: C minor
            phrases: %s
            leave: %s
            bars: |
              | Cm7 | Cm7 | F7 | F7 |
          high:
            key: F minor
            bars: |
              | Fm7 |
        form: %s
        """;
    Chart words =
        read(sections.formatted("statement 2, reply 1, rest 1", "run, hold", "low high low"));
    Chart lists =
        read(
            sections.formatted(
                "[statement 2, reply 1, rest 1]", "[run, hold]", "[low, high, low]"));
    assertThat(words).isEqualTo(lists);
    assertThat(words.form()).extracting(Section::name).containsExactly("low", "high", "low");
    Section low = words.form().get(0);
    assertThat(low.leave()).containsExactly(Leave.RUN, Leave.HOLD);
    assertThat(low.phrases())
        .containsExactly(
            new PhraseTurn(Role.STATEMENT, 2, false),
            new PhraseTurn(Role.REPLY, 1, false),
            new PhraseTurn(Role.REST, 1, false));
  }

  @Test
  void again_marks_the_statement_that_comes_back() {
    Section section = section("    phrases: statement 1, statement 1 again\n", "| Cm7 | Cm7 |");
    assertThat(section.phrases())
        .containsExactly(
            new PhraseTurn(Role.STATEMENT, 1, false), new PhraseTurn(Role.STATEMENT, 1, true));
  }

  private static List<Integer> keys(Chart chart, int section) {
    return chart.form().get(section).riff().orElseThrow().bass().stream().map(Note::key).toList();
  }

  @Test
  void a_shift_moves_keys_chords_and_riffs_spelled_with_the_fewest_accidentals() {
    Chart chart =
        read(
            """
            sections:
              low:
                key: G minor
                riff:
                  bass: G2h D3h
                bars: |
                  | Gm7 D7/F# |
            """);
    Section up = chart.shifted(3).form().get(0);
    assertThat(up.key()).hasToString("Bb minor");
    assertThat(drawn(up)).isEqualTo("Bbm7@1:2 F7/A@3:2");
    assertThat(drawn(chart.shifted(-3).form().get(0))).isEqualTo("Em7@1:2 B7/D#@3:2");
    for (int semitones = -11; semitones <= 11; semitones++) {
      Section moved = chart.shifted(semitones).form().get(0);
      assertThat(moved.key()).isEqualTo(Keys.key("G minor").shifted(semitones));
      assertThat(keys(chart.shifted(semitones), 0)).containsExactly(43 + semitones, 50 + semitones);
    }
  }

  /** Five flats and seven, not five flats and five sharps: what stays has one name in both keys. */
  @Test
  void shifted_keys_stay_near_each_other() {
    Chart chart =
        read(
            """
            sections:
              low: {key: F minor, bars: '| Fm7 |'}
              high: {key: Eb minor, bars: '| Ebm7 |'}
            """);
    assertThat(chart.shifted(5).form())
        .extracting(section -> section.key().toString())
        .containsExactly("Bb minor", "Ab minor");
    assertThat(chart.shifted(-12).form())
        .extracting(Section::key)
        .isEqualTo(chart.form().stream().map(Section::key).toList());
  }

  @Test
  void another_tempo_keeps_the_proportions_of_the_sections() {
    Chart chart =
        read(
            """
            tempo: 100
            sections:
              low:
                key: C minor
                bars: |
                  | Cm7 |
              high:
                key: F minor
                tempo: 110
                bars: |
                  | Fm7 |
            """);
    Chart slow = chart.withTempo(Tempo.of(50));
    assertThat(slow.form().get(0).tempo()).isEqualTo(Tempo.of(50));
    assertThat(slow.form().get(1).tempo()).isEqualTo(Tempo.of(55));
    assertThat(chart.withGroove("plain").form()).allMatch(s -> s.groove().get().equals("plain"));
  }

  @Test
  void question_and_answer_are_statement_and_reply() {
    Section asked = section("    phrases: Question 2, answer 1, question 1 again\n", "| Cm7 |");
    Section stated = section("    phrases: statement 2, reply 1, statement 1 again\n", "| Cm7 |");
    assertThat(asked.phrases()).isEqualTo(stated.phrases()).hasSize(3);
  }

  @Test
  void the_position_of_the_hand_is_a_fret_or_free() {
    String rest = "sections:\n  low:\n    key: C minor\n    bars: |\n      | Cm7 |\n";
    assertThat(read("position: 5\n" + rest).position()).contains(5);
    assertThat(read(rest).position()).isEmpty();
    for (String wrong : List.of("0", "21", "fifth")) {
      Source source = new Source("test.yaml", "position: " + wrong + "\n" + rest);
      assertThat(ChartReader.read(source).problems()).as(wrong).hasSize(1);
    }
  }

  @Test
  void capo_and_tuning_are_read_as_words_and_as_a_list() {
    String rest = "sections:\n  low:\n    key: C minor\n    bars: |\n      | Cm7 |\n";
    assertThat(read("tuning: D A D G A D\ncapo: 3\n" + rest).capo()).isEqualTo(3);
    assertThat(read("tuning: [D2, A2, D3, G3, A3, D4]\n" + rest).tuning().strings())
        .isEqualTo(read("tuning: D A D G A D\n" + rest).tuning().strings());
    assertThat(read("tuning: drop D\n" + rest).tuning().strings().get(0)).hasToString("D2");
  }

  @ParameterizedTest
  @CsvSource({"1.5, 3/2", "1.0, 1", "0.25, 1/4", "2.75, 11/4"})
  void a_decimal_pickup_is_answered_with_its_fraction(String decimal, String fraction) {
    String text =
        "pickup: " + decimal + "\nsections:\n  low:\n    key: C minor\n    bars: |\n      | Cm |\n";
    assertThat(ChartReader.read(new Source("test.yaml", text)).problems().get(0).suggestion())
        .contains(fraction);
  }
}

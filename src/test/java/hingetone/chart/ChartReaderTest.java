package hingetone.chart;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.PhraseTurn.Role;
import hingetone.neck.Tuning;
import hingetone.score.Note;
import hingetone.text.Diagnostic;
import hingetone.text.Reading;
import hingetone.text.Source;
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
    return read("sections:\n  low:\n    key: A minor\n"
            + extra
            + "    bars: |\n      "
            + bars
            + "\n")
        .form()
        .get(0);
  }

  /** Bars as {@code Am7@1:2 D7@3:2 | ...}: chord, beat and beats. */
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
        "4/4; | Am7 |; Am7@1:4",
        "4/4; | Am7 D7 |; Am7@1:2 D7@3:2",
        "4/4; | Am7 D7 G C |; Am7@1:1 D7@2:1 G@3:1 C@4:1",
        "4/4; | Am7 / / G |; Am7@1:3 G@4:1",
        "4/4; | Am7 | % | % |; Am7@1:4 | Am7@1:4 | Am7@1:4",
        "4/4; | Am7 / D7 / | % |; Am7@1:2 D7@3:2 | Am7@1:2 D7@3:2",
        "4/4; | N.C. | Am7 |; N.C.@1:4 | Am7@1:4",
        "4/4; |: Am7 | D7 :|; Am7@1:4 | D7@1:4 | Am7@1:4 | D7@1:4",
        "4/4; |: Am7 :| x3; Am7@1:4 | Am7@1:4 | Am7@1:4",
        "4/4; | G |: Am7 :| C |; G@1:4 | Am7@1:4 | Am7@1:4 | C@1:4",
        "4/4; | D/F# | C/G |; D/F#@1:4 | C/G@1:4",
        "3/4; | Am7 D7 G |; Am7@1:1 D7@2:1 G@3:1",
        "12/8; | Am7 D7 |; Am7@1:2 D7@3:2",
        "5/4; | Am7 / / D7 / |; Am7@1:3 D7@4:2",
        "7/8; | Am7 / / / D7 / / |; Am7@1:4 D7@5:3",
        "6/8; | Am7 D7 |; Am7@1:1 D7@2:1",
        "4/4; | Bbmaj7 | Ebm7b5 | F#°7 |; Bbmaj7@1:4 | Ebm7b5@1:4 | F#dim7@1:4",
      })
  void bars_are_read_as_they_are_written(String meter, String bars, String expected) {
    assertThat(drawn(section("    meter: " + meter + "\n", bars))).isEqualTo(expected);
  }

  @Test
  void what_is_not_said_is_as_usual() {
    Section section = section("", "| Am7 |");
    assertThat(section.tempo()).isEqualTo(Tempo.of(100));
    assertThat(section.meter()).isEqualTo(Meter.COMMON);
    assertThat(section.groove()).isEmpty();
    assertThat(section.band()).isEqualTo(Band.NORMAL);
    assertThat(section.swing()).isEmpty();
    assertThat(section.phrases()).isEmpty();
    assertThat(section.leave()).isEmpty();
    assertThat(section.pickup()).isEqualTo(Beats.of(3, 2));
    Chart chart = read("sections:\n  low:\n    key: A minor\n    bars: |\n      | Am7 |\n");
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
    assertThat(low.band()).isEqualTo(Band.LIGHT);
    assertThat(low.swing()).contains(60);
    assertThat(low.pickup()).isEqualTo(Beats.ONE);
    assertThat(high.meter()).isEqualTo(Meter.of(7, 8).withGrouping(3, 2, 2));
    assertThat(high.tempo()).hasToString("120.5");
    assertThat(high.groove()).contains("gravel-road");
    assertThat(high.band()).isEqualTo(Band.FULL);
    assertThat(high.swing()).contains(55);
    assertThat(high.pickup()).isEqualTo(Beats.of(2));
  }

  @Test
  void words_in_a_line_and_a_list_are_the_same() {
    String sections =
        """
        sections:
          low:
            key: A minor
            phrases: %s
            leave: %s
            bars: |
              | Am7 | Am7 | D7 | D7 |
          high:
            key: B minor
            bars: |
              | Bm7 |
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
    Section section = section("    phrases: statement 1, statement 1 again\n", "| Am7 | Am7 |");
    assertThat(section.phrases())
        .containsExactly(
            new PhraseTurn(Role.STATEMENT, 1, false), new PhraseTurn(Role.STATEMENT, 1, true));
  }

  @Test
  void a_riff_moves_to_another_sections_key_along_its_scale() {
    Chart chart =
        read(
            """
            sections:
              low:
                key: A minor
                riff:
                  bass: A2q C3q D3q E3q
                bars: |
                  | Am7 |
              high:
                key: B minor
                riff-of: low
                bars: |
                  | Bm7 |
              major:
                key: C major
                riff-of: low
                bars: |
                  | C |
            """);
    assertThat(keys(chart, 0)).containsExactly(45, 48, 50, 52);
    assertThat(keys(chart, 1)).containsExactly(47, 50, 52, 54);
    // Along the scale: first, third, fourth and fifth degree of C major.
    assertThat(keys(chart, 2)).containsExactly(48, 52, 53, 55);
  }

  private static final String RIFF_IN_A_MINOR =
      """
      sections:
        low:
          key: A minor
          riff:
            bass: A2q C3q D3q E3q
          bars: |
            | Am7 |
        high:
          key: KEY
          riff-of: low HOW
          bars: |
            BARS
      """;

  private List<Integer> moved(String key, String how, String bars) {
    String text = RIFF_IN_A_MINOR.replace("KEY", key).replace("HOW", how).replace("BARS", bars);
    return keys(read(text), 1);
  }

  @Test
  void notes_of_the_chord_go_to_the_chord_that_they_are_played_over() {
    // B D (E) F#: over G7 the F# goes to F, over E7 to E; the fourth between is no chord note.
    assertThat(moved("B minor", "", "| Bm7 | G7 | E7 |"))
        .containsExactly(47, 50, 52, 54, 47, 50, 52, 53, 47, 50, 52, 52);
    assertThat(moved("B minor", "", "| N.C. |")).containsExactly(47, 50, 52, 54);
  }

  @Test
  void a_riff_moved_exactly_keeps_its_intervals_whatever_the_chord() {
    assertThat(moved("C major", "exactly", "| C | F7 |")).containsExactly(48, 51, 53, 55);
    assertThat(moved("C major", "", "| C |")).containsExactly(48, 52, 53, 55);
  }

  @Test
  void a_bass_riff_does_not_fall_below_the_lowest_string() {
    assertThat(moved("E minor", "", "| Em7 |")).containsExactly(40, 43, 45, 47);
    String low = RIFF_IN_A_MINOR.replace("A2q C3q D3q E3q", "E1h A1h");
    String text =
        low.replace("KEY", "E minor").replace("HOW", "exactly").replace("BARS", "| Em7 |");
    assertThat(keys(read(text), 1)).containsExactly(35, 40);
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
                key: A minor
                riff:
                  bass: A2h E3h
                bars: |
                  | Am7 E7/G# |
            """);
    Section up = chart.shifted(1).form().get(0);
    assertThat(up.key()).hasToString("Bb minor");
    assertThat(drawn(up)).isEqualTo("Bbm7@1:2 F7/A@3:2");
    assertThat(keys(chart.shifted(1), 0)).containsExactly(46, 53);
    assertThat(chart.shifted(2).form().get(0).key()).hasToString("B minor");
    assertThat(drawn(chart.shifted(-2).form().get(0))).isEqualTo("Gm7@1:2 D7/F#@3:2");
  }

  @Test
  void another_tempo_keeps_the_proportions_of_the_sections() {
    Chart chart =
        read(
            """
            tempo: 100
            sections:
              low:
                key: A minor
                bars: |
                  | Am7 |
              high:
                key: B minor
                tempo: 110
                bars: |
                  | Bm7 |
            """);
    Chart slow = chart.withTempo(Tempo.of(50));
    assertThat(slow.form().get(0).tempo()).isEqualTo(Tempo.of(50));
    assertThat(slow.form().get(1).tempo()).isEqualTo(Tempo.of(55));
    assertThat(chart.withGroove("plain").form()).allMatch(s -> s.groove().get().equals("plain"));
  }

  @Test
  void capo_and_tuning_are_read_as_words_and_as_a_list() {
    String rest = "sections:\n  low:\n    key: A minor\n    bars: |\n      | Am7 |\n";
    assertThat(read("tuning: D A D G A D\ncapo: 3\n" + rest).capo()).isEqualTo(3);
    assertThat(read("tuning: [D2, A2, D3, G3, A3, D4]\n" + rest).tuning().strings())
        .isEqualTo(read("tuning: D A D G A D\n" + rest).tuning().strings());
    assertThat(read("tuning: drop D\n" + rest).tuning().strings().get(0)).hasToString("D2");
  }

  @ParameterizedTest
  @CsvSource({"1.5, 3/2", "1.0, 1", "0.25, 1/4", "2.75, 11/4"})
  void a_decimal_pickup_is_answered_with_its_fraction(String decimal, String fraction) {
    String text =
        "pickup: " + decimal + "\nsections:\n  low:\n    key: A minor\n    bars: |\n      | A |\n";
    assertThat(ChartReader.read(new Source("test.yaml", text)).problems().get(0).suggestion())
        .contains(fraction);
  }
}

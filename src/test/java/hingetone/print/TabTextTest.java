package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.phrase.Phrase;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.MadePhrase;
import hingetone.plan.Plan;
import hingetone.text.reading.Source;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.time.Beats;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class TabTextTest {
  /** The first phrase of a chart in this meter, with these notes: {@code 0 C5 2:5}. */
  private static String tab(String meter, Tuning tuning, String... notes) {
    String yaml =
        "meter: "
            + meter
            + "\nsections:\n  a:\n    key: D minor\n    bars: |\n      | Dm7 | Dm7 | Dm7 | Dm7 |\n"
            + "    phrases: statement 2, reply 2\n";
    Chart chart = ChartReader.read(new Source("chart", yaml)).value().orElseThrow();
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    List<Tone> tones = Arrays.stream(notes).map(TabTextTest::tone).toList();
    List<Spot> spots = Arrays.stream(notes).map(TabTextTest::spot).toList();
    Phrase phrase = new Phrase(Key.parse("D minor").orElseThrow(), tones);
    MadePhrase made = new MadePhrase(plan.prompt(1), phrase, spots, "for a test");
    return String.join("\n", TabText.of(form, Fretboard.of(tuning, 0), made)) + "\n";
  }

  private static Tone tone(String note) {
    String[] words = note.split(" ");
    Beats onset = Beats.parse(words[0]).orElseThrow();
    Tone tone = Tone.of(onset, Beats.parse(words[1]).orElseThrow(), pitch(words[2]));
    return words.length > 4 ? tone.withBend(pitch(words[4])) : tone;
  }

  private static Pitch pitch(String text) {
    return Pitch.parse(text).orElseThrow();
  }

  private static Spot spot(String note) {
    String[] at = note.split(" ")[3].split(":");
    return new Spot(Integer.parseInt(at[0]), Integer.parseInt(at[1]));
  }

  @Test
  void strings_from_the_highest_down_beats_above_and_the_bar_line_before_the_landing() {
    assertThat(tab("4/4", Tuning.STANDARD, "-1 1/2 G4 2:8", "-1/2 1/2 A4 2:10", "0 3/2 C5 1:8"))
        .isEqualTo(
            """
                 4  &   1  &  2
            E4  |------|8--------|
            B3  |8--10-|---------|
            G3  |------|---------|
            D3  |------|---------|
            A2  |------|---------|
            E2  |------|---------|
            """);
  }

  @Test
  void a_bend_stands_with_the_fret_it_sounds_like_and_notes_struck_together_in_a_column() {
    assertThat(tab("4/4", Tuning.STANDARD, "0 1 G4 2:8 A4", "1 1 C5 1:8", "1 1 E4 3:9").lines())
        .contains(
            "     1    &  2  &",
            "E4  |--------8-----|",
            "B3  |8b10----------|",
            "G3  |--------9-----|");
  }

  @Test
  void sixteenths_take_a_finer_grid_and_the_beats_stay_above_their_column() {
    List<String> rows =
        tab("4/4", Tuning.STANDARD, "0 1/4 A4 2:10", "1/4 1/4 C5 1:8", "1/2 1/2 A4 2:10")
            .lines()
            .toList();
    assertThat(rows.get(0)).isEqualTo("     1     &");
    assertThat(rows.get(1)).isEqualTo("E4  |---8--------|");
    assertThat(rows.get(2)).isEqualTo("B3  |10----10----|");
  }

  @Test
  void compound_and_odd_meters_count_their_own_beats() {
    assertThat(tab("6/8", Tuning.STANDARD, "0 3/2 A4 2:10", "3/2 1 C5 1:8").lines().findFirst())
        .contains("     1        2");
    assertThat(tab("7/8", Tuning.STANDARD, "0 1 A4 2:10", "1 1 C5 1:8").lines().findFirst())
        .contains("     1  2  3  4");
  }

  @Test
  void any_number_of_strings_is_drawn() {
    Tuning four = Tuning.parse("E1 A1 D2 G2").orElseThrow();
    assertThat(tab("4/4", four, "0 1 A2 1:2").lines().map(l -> l.substring(0, 3).strip()))
        .containsExactly("", "G2", "D2", "A1", "E1");
  }

  @Test
  void all_rows_of_strings_are_equally_long() {
    assertThat(
            tab("4/4", Tuning.STANDARD, "-3/2 1/4 G4 2:8 A4", "0 4 A4 2:10", "4 1/3 C5 1:8")
                .lines()
                .skip(1)
                .map(String::length)
                .distinct())
        .hasSize(1);
  }
}

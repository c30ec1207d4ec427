package hingetone.print;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.hearing.Alignment;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Technique;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.neck.Tuning;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.TempoMap;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** At 60 quarter notes a minute, bar 1 one second after the start. */
class HeardTabTest {
  private static final Fretboard NECK = Fretboard.of(Tuning.STANDARD, 0);

  private static final Transcription WRITTEN =
      new Transcription(
          9,
          0,
          List.of(
              placed(0, 1, 57, 57, Technique.PLAIN, 1, 0),
              placed(1, 2.5, 50, 50, Technique.PLAIN, 2, 0),
              placed(1, 2.5, 60, 60, Technique.PLAIN, 1, 3),
              placed(2.5, 2.9, 62, 64, Technique.BEND, 1, 5),
              placed(5, 6, 53, 53, Technique.LEGATO, 2, 3)),
          List.of());

  @Test
  void without_a_chart_it_counts_seconds() {
    assertThat(HeardTab.of(WRITTEN, NECK, Optional.empty(), 80))
        .containsExactly(
            "begins 0.00 1.00 2.50 5.00",
            "lasts  1.00 1.50 0.40 1.00",
            "E4   |-0----3----5b7-------",
            "B3   |------0---------p3---",
            "G3   |---------------------",
            "D3   |---------------------",
            "A2   |---------------------",
            "E2   |---------------------",
            "");
  }

  @Test
  void with_a_chart_it_counts_bars_and_beats() {
    assertThat(HeardTab.of(WRITTEN, NECK, Optional.of(bars()), 80))
        .containsExactly(
            "bar    0   1             2",
            "beat   4   1     2+1/2   1",
            "lasts  1   1+1/2 1/2     1",
            "E4   |-0-|-3-----5b7---|----",
            "B3   |---|-0-----------|-p3-",
            "G3   |---|-------------|----",
            "D3   |---|-------------|----",
            "A2   |---|-------------|----",
            "E2   |---|-------------|----",
            "");
  }

  @Test
  void a_bar_with_a_long_number_begins_a_row_too() {
    Alignment late = Alignment.at(1 - 4.0 * 12_344, TempoMap.of(Beats.of(60)), List.of());
    HeardBars bars = HeardBars.of(bars().form(), late, WRITTEN);
    List<String> rows = HeardTab.of(WRITTEN, NECK, Optional.of(bars), 18);
    assertThat(rows).filteredOn(row -> row.startsWith("bar")).hasSizeGreaterThan(1);
    assertThat(rows).filteredOn(row -> row.startsWith("bar    1234")).isNotEmpty();
  }

  private static HeardBars bars() {
    String yaml =
        "title: Slip\ntempo: 60\nsections:\n  a:\n    key: F minor\n    bars: |\n      | Fm7 |\n";
    Form form = Form.of(ChartReader.read(new Source("slip.yaml", yaml)).value().orElseThrow());
    return HeardBars.of(form, Alignment.at(1, TempoMap.of(Beats.of(60)), List.of()), WRITTEN);
  }

  private static Placed placed(
      double at, double end, double struck, double reached, Technique how, int string, int fret) {
    HeardNote note = new HeardNote(at, end, -20, struck, reached, how, false, List.of(), 0.9);
    return new Placed(note, Optional.of(new Spot(string, fret)));
  }
}

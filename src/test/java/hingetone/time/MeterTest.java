package hingetone.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the beat is in each meter is common practice. */
class MeterTest {
  @ParameterizedTest
  @CsvSource({
    "2/4, 2, 1,   2,    1",
    "3/4, 3, 1,   3,    1",
    "4/4, 4, 1,   4,    1 3",
    "5/4, 5, 1,   5,    1 4",
    "6/4, 6, 1,   6,    1 3 5",
    "2/2, 2, 2,   4,    1",
    "6/8, 2, 3/2, 3,    1",
    "9/8, 3, 3/2, 9/2,  1",
    "12/8, 4, 3/2, 6,   1 3",
    "3/8, 3, 1/2, 3/2,  1",
    "5/8, 5, 1/2, 5/2,  1 4",
    "7/8, 7, 1/2, 7/2,  1 3 5",
  })
  void a_meter_knows_its_beats(
      String text, int beats, String beatLength, String barLength, String strong) {
    Meter meter = Meter.parse(text).orElseThrow();

    assertThat(meter.beatsPerBar()).isEqualTo(beats);
    assertThat(meter.beatLength()).isEqualTo(Beats.parse(beatLength).orElseThrow());
    assertThat(meter.barLength()).isEqualTo(Beats.parse(barLength).orElseThrow());
    assertThat(meter.beatLength().times(beats)).isEqualTo(meter.barLength());
    assertThat(meter.strongBeats().stream().map(String::valueOf))
        .containsExactly(strong.split(" "));
    assertThat(meter).hasToString(text);
  }

  @Test
  void another_grouping_moves_the_strong_beats() {
    assertThat(Meter.of(7, 8).withGrouping(3, 2, 2).strongBeats()).containsExactly(1, 4, 6);
    assertThatThrownBy(() -> Meter.of(7, 8).withGrouping(3, 3))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void what_is_no_meter_is_refused() {
    for (String text : List.of("", "4", "4/3", "0/4", "33/4", "4/4/4", "x/4", "4/", "-3/4")) {
      assertThat(Meter.parse(text)).as(text).isEmpty();
    }
  }

  @Test
  void tempo_counts_quarters_and_in_compound_meters_dotted_quarters() {
    assertThat(Tempo.of(100).quartersPerMinute(Meter.of(7, 8))).isEqualTo(Beats.of(100));
    assertThat(Tempo.of(60).quartersPerMinute(Meter.of(12, 8))).isEqualTo(Beats.of(90));
    assertThat(Tempo.parse("92.5").orElseThrow().quartersPerMinute(Meter.COMMON))
        .isEqualTo(Beats.of(185, 2));
  }

  @Test
  void what_is_no_tempo_is_refused() {
    for (String text : List.of("", "19.9", "401", "fast", "1e2", "-60", "100.1234")) {
      assertThat(Tempo.parse(text)).as(text).isEmpty();
    }
    assertThat(Tempo.parse("20")).isPresent();
    assertThat(Tempo.parse("400")).isPresent();
  }
}

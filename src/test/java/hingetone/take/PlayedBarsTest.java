package hingetone.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlayedBarsTest {
  private static final long SECOND = 1_000_000_000;

  private final PlayedBars bars = new PlayedBars();

  private void beats(int bar, long from, long each, int count) {
    bars.bar(bar, 0);
    for (int beat = 1; beat <= count; beat++) {
      bars.beat(from + (beat - 1) * each, beat);
    }
  }

  private double beatAt(long nanos) {
    return bars.at(nanos).orElseThrow().beat();
  }

  @Test
  void a_moment_between_two_beats_lies_between_them_and_after_the_last_goes_on_evenly() {
    beats(1, 0, SECOND / 2, 4);
    assertThat(beatAt(SECOND / 4)).isEqualTo(1.5);
    assertThat(beatAt(SECOND * 7 / 4)).isEqualTo(4.5);
    assertThat(bars.at(-1)).isEmpty();
  }

  @Test
  void a_jump_or_a_loop_is_a_bar_of_another_number() {
    beats(7, 0, SECOND, 4);
    beats(3, 4 * SECOND, SECOND, 4);
    assertThat(bars.at(5 * SECOND).orElseThrow().bar().number()).isEqualTo(3);
    assertThat(bars.at(5 * SECOND).orElseThrow().index()).isEqualTo(1);
  }

  @Test
  void in_a_pause_there_is_no_place_and_on_both_sides_of_it_there_is() {
    bars.bar(1, 0);
    bars.beat(0, 1);
    bars.beat(SECOND, 2);
    bars.beat(2 * SECOND, 3);
    bars.pause();
    bars.beat(33 * SECOND, 4);
    assertThat(beatAt(2 * SECOND + SECOND / 4)).isEqualTo(3.25);
    assertThat(bars.at(10 * SECOND)).isEmpty();
    assertThat(beatAt(33 * SECOND - SECOND / 4)).isEqualTo(3.75);
  }

  /**
   * An hour of changing tempos: the place found against the place that the tempo says, from the
   * same definition the sequencer plays by: so many nanoseconds a beat until the next change.
   */
  @Test
  void after_an_hour_of_changing_tempos_a_note_is_within_a_millisecond_of_where_it_was_played() {
    Random random = new Random(7);
    Map<Long, Double> played = new LinkedHashMap<>();
    double now = 0;
    double each = SECOND / 2.0;
    for (int bar = 1; now < 3600.0 * SECOND; bar++) {
      bars.bar(bar, 0);
      for (int beat = 1; beat <= 4; beat++) {
        each = random.nextInt(10) == 0 ? SECOND * 60.0 / (60 + random.nextInt(120)) : each;
        bars.beat(Math.round(now), beat);
        double part = random.nextDouble();
        played.put(Math.round(now + part * each), 4 * bar + beat + part);
        now += each;
      }
    }
    double worst = 0;
    for (Map.Entry<Long, Double> note : List.copyOf(played.entrySet())) {
      PlayedBars.Place place = bars.at(note.getKey()).orElseThrow();
      double beats = 4 * place.bar().number() + place.beat() - note.getValue();
      boolean last = place.index() == bars.bars().size() - 1 && place.beat() >= 4;
      worst = last ? worst : Math.max(worst, Math.abs(beats) * place.nanosPerBeat() / 1e6);
    }
    assertThat(played).hasSizeGreaterThan(5000);
    assertThat(worst).isCloseTo(0, within(1.0));
  }
}

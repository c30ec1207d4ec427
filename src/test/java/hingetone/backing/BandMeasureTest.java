package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.groove.BassStyle.LeadIn;
import hingetone.groove.ChordStyle.Voicing;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.groove.Human;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The aims of {@code src/docs/band.md}, held for every groove over the demo charts. */
class BandMeasureTest {
  private static final int LAPS = BandMeasure.LAPS;
  private static final int TICKS = 960;

  /**
   * What fills, crashes, turnarounds and the first bar of each lap take, of a hundred bars, besides
   * what the groove itself varies.
   */
  private static final double MOST_LOST = 36;

  static List<Groove> grooves() {
    return Grooves.builtIn().all();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void the_band_keeps_its_aims(Groove groove) {
    BandMeasure measured = new BandMeasure(groove, LAPS);
    if (groove.chords().voicing() != Voicing.POWER) {
      assertThat(measured.ratio()).as("movement against root position").isLessThan(1 / 3.0);
    }
    assertThat(measured.muddy).as("low intervals").isZero();
    assertThat(measured.highest)
        .as("highest note of the chords")
        .isLessThan(TimeMeasure.LEAD_REGISTER);
    assertThat(measured.leaps).as("leaps above an octave").isZero();
    assertThat(measured.outOfRange + measured.outOfLap).as("out of range or lap").isZero();
    assertThat(measured.equalLaps).as("laps with the same drums").isZero();
    assertThat(BandMeasure.percent(measured.keptKicks, measured.bars))
        .as("bars that keep the kick, of %d that the groove names", groove.keep())
        .isBetween(groove.keep() - MOST_LOST, (double) groove.keep());
    if (groove.chords().voicing() != Voicing.POWER) {
      assertThat(measured.chordsWithGuides).isEqualTo(measured.chords);
    }
    if (groove.bass().rootOnChange()) {
      assertThat(BandMeasure.percent(measured.rootsOnChange, measured.changes))
          .isGreaterThanOrEqualTo(97);
    }
    if (groove.bass().leadIn() == LeadIn.CHANGES) {
      assertThat(BandMeasure.percent(measured.approached, measured.arrivals))
          .isGreaterThanOrEqualTo(70);
    }
  }

  @Test
  void swing_lands_on_the_tick_that_the_percentage_says() {
    Chart chart = BandMeasure.chart("lantern-quay", "coal-train", Meter.COMMON);
    List<Note> drums =
        Backing.of(chart, Grooves.builtIn()).exact().lap(2).part(Role.DRUMS).orElseThrow().notes();
    Set<Long> hats =
        drums.stream()
            .filter(n -> n.key() == 42)
            .map(n -> n.onset().modulo(Beats.ONE).toUnits(TICKS))
            .collect(Collectors.toSet());
    assertThat(hats).containsExactlyInAnyOrder(0L, Math.round(0.66 * TICKS));
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void no_note_lies_farther_from_its_place_than_the_groove_says(Groove groove) {
    Meter meter = groove.meters().isEmpty() ? Meter.COMMON : groove.meters().get(0);
    Chart chart = BandMeasure.chart("mill-race", groove.name(), meter);
    Backing backing = Backing.of(chart, Grooves.builtIn());
    Human human = groove.human();
    for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
      for (Note note : backing.lap(1).part(role).orElseThrow().notes()) {
        Human.Lane lane = Human.Lane.of(role, note.key());
        int strum = role == Role.CHORDS ? groove.chords().strumMillis() : 0;
        assertThat(note.offsetMicros() - 1000L * human.late(lane))
            .isBetween(-1000L * human.timingMillis(), 1000L * (human.timingMillis() + strum));
      }
    }
  }

  @Test
  void the_last_lap_ends_on_a_bar_of_its_own() {
    Chart chart = BandMeasure.chart("lantern-quay", "gravel-road", Meter.COMMON);
    Backing backing = Backing.of(chart, Grooves.builtIn());
    Beats length = backing.form().length();
    assertThat(backing.lastLap(3).length()).isEqualTo(length.plus(Beats.of(4)));
    for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
      assertThat(backing.lastLap(3).part(role).orElseThrow().notes())
          .anyMatch(n -> n.onset().equals(length));
    }
  }
}

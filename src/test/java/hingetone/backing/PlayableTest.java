package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.time.Meter;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each groove at both ends of its tempo range, over the demo charts. What people can play is common
 * practice, from memory: about twelve strokes a second with one hand or on one pedal for a moment,
 * as many plucked with two fingers or strummed.
 */
class PlayableTest {
  private static final int LAPS = 2;
  private static final double HAND_OR_FOOT_MS = 80;
  private static final double FINGERS_MS = 85;
  private static final double LEAP_MS = 100;

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  private static List<Meter> meters(Groove groove) {
    List<Meter> any = List.of(Meter.COMMON, Meter.of(3, 4), Meter.of(12, 8), Meter.of(7, 8));
    return groove.meters().isEmpty() ? any : groove.meters();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void at_its_fastest_people_can_play_it(Groove groove) {
    for (Meter meter : meters(groove)) {
      for (String chart : BandMeasure.CHARTS) {
        Backing backing = backing(groove, chart, meter);
        for (int lap = 1; lap <= LAPS; lap++) {
          Playing playing = Playing.of(backing.lap(lap), meter, groove.fastest());
          assertThat(playing.hand()).as("hand " + meter).isGreaterThan(HAND_OR_FOOT_MS);
          assertThat(playing.together()).as("hands " + meter).isLessThanOrEqualTo(2);
          assertThat(playing.foot()).as("foot " + meter).isGreaterThan(HAND_OR_FOOT_MS);
          assertThat(playing.pluck()).as("pluck " + meter).isGreaterThan(FINGERS_MS);
          assertThat(playing.leap()).as("leap " + meter).isGreaterThan(LEAP_MS);
          assertThat(playing.leapsASecond()).as("leaps " + meter).isLessThanOrEqualTo(2);
          assertThat(playing.stroke()).as("stroke " + meter).isGreaterThan(FINGERS_MS);
          int blur = groove.chords().strumMillis() + 2 * groove.human().timingMillis();
          assertThat(playing.stroke()).as("strum " + meter).isGreaterThan(blur);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void at_its_slowest_the_time_is_kept_on_every_beat(Groove groove) {
    for (Meter meter : meters(groove)) {
      double quarter = 60_000.0 / groove.slowest() / meter.tempoNote().toUnits(1000) * 1000;
      double beat = Math.max(1, meter.beatLength().toUnits(1000) / 1000.0) * quarter;
      for (String chart : BandMeasure.CHARTS) {
        Backing backing = backing(groove, chart, meter);
        for (int lap = 1; lap <= LAPS; lap++) {
          Playing playing = Playing.of(backing.lap(lap), meter, groove.slowest());
          boolean stops = backing.plan(lap).stream().anyMatch(BarPlan::stop);
          double longest = stops ? meter.barLength().toUnits(1000) / 1000.0 * quarter : beat;
          assertThat(playing.hole()).as("hole in " + meter).isLessThanOrEqualTo(longest + 0.01);
        }
      }
    }
  }

  @Test
  void a_groove_at_twice_its_fastest_tempo_is_found_out() {
    Groove funk = Grooves.builtIn().read("tin-kettle").value().orElseThrow();
    Backing backing = backing(funk, "lantern-quay", Meter.COMMON);
    Playing playing = Playing.of(backing.lap(1), Meter.COMMON, 2 * funk.fastest());
    assertThat(playing.hand()).isLessThan(HAND_OR_FOOT_MS);
    assertThat(playing.pluck()).isLessThan(FINGERS_MS);
  }

  private static Backing backing(Groove groove, String chart, Meter meter) {
    return Backing.of(BandMeasure.chart(chart, groove.name(), meter), Grooves.builtIn()).exact();
  }
}

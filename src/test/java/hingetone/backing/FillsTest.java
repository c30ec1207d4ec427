package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.Fill;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A drummer has several fills, and plays them as loud as the music is. */
class FillsTest {
  private static final int LAPS = 8;
  private static final Set<Integer> BASS_DRUMS_AND_PEDAL = Set.of(35, 36, 44);

  /** Claps, tambourine, cabasa and maracas: another player's. */
  private static final Set<Integer> ANOTHER = Set.of(39, 54, 69, 70);

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  private static Groove groove(String name) {
    return Grooves.builtIn().read(name).value().orElseThrow();
  }

  private static Backing backing(Groove groove, String chart) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    return Backing.of(BandMeasure.chart(chart, groove.name(), meter), Grooves.builtIn()).exact();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void a_section_is_left_in_at_least_four_ways_over_eight_laps(Groove groove) {
    for (String chart : BandMeasure.CHARTS) {
      Backing backing = backing(groove, chart);
      Map<Integer, Set<Optional<Fill>>> ways = new HashMap<>();
      for (int lap = 1; lap <= LAPS; lap++) {
        for (BarPlan plan : backing.plan(lap)) {
          if (plan.leadsOn()) {
            ways.computeIfAbsent(plan.bar().number(), bar -> new HashSet<>()).add(plan.fill());
          }
        }
      }
      assertThat(ways.values()).isNotEmpty().allMatch(fills -> fills.size() >= 4);
    }
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void no_fill_is_louder_than_what_the_drummer_plays_besides(Groove groove) {
    Backing backing = backing(groove, "lantern-quay");
    int fills = 0;
    for (int lap = 1; lap <= LAPS; lap++) {
      Score score = backing.lap(lap);
      for (BarPlan plan : backing.plan(lap)) {
        if (plan.fill().isPresent()) {
          Beats from = plan.bar().start().plus(plan.fill().get().start(plan.bar().meter()));
          int loudest = plan.velocity(loudestDrawn(groove, plan));
          fills++;
          assertThat(score.part(Role.DRUMS).orElseThrow().notes())
              .filteredOn(n -> !n.onset().isBefore(from) && n.onset().isBefore(plan.bar().end()))
              .filteredOn(n -> !BASS_DRUMS_AND_PEDAL.contains(n.key()))
              .filteredOn(n -> !ANOTHER.contains(n.key()))
              .allMatch(n -> n.velocity() <= loudest);
        }
      }
    }
    assertThat(fills).isGreaterThan(LAPS);
  }

  /** The loudest stroke of a hand in any pattern that may be played in a bar. */
  private static int loudestDrawn(Groove groove, BarPlan plan) {
    return groove.drums().patterns().stream()
        .filter(p -> p.use().fits(plan.bar().meter()))
        .filter(p -> p.use().band().map(plan.band()::equals).orElse(true))
        .flatMap(p -> Stream.of(0, 1).flatMap(i -> p.strokes(i, plan.bar().meter()).stream()))
        .filter(n -> !BASS_DRUMS_AND_PEDAL.contains(n.key()) && !ANOTHER.contains(n.key()))
        .mapToInt(Note::velocity)
        .max()
        .orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(strings = {"lantern-slow", "paper-boat", "winter-rain"})
  void a_ballads_fills_are_soft(String ballad) {
    assertThat(meanVelocity(groove(ballad))).isLessThan(78);
    assertThat(meanVelocity(groove("gravel-road"))).isGreaterThan(90);
  }

  private static double meanVelocity(Groove groove) {
    Meter meter = groove.meters().get(0);
    return groove.drums().fills().stream()
        .filter(fill -> fill.size() != Fill.Size.SMALL)
        .flatMap(fill -> fill.strokes(meter).stream())
        .mapToInt(Note::velocity)
        .average()
        .orElseThrow();
  }

  @Test
  void now_and_then_a_section_in_the_same_key_begins_with_the_crash_alone() {
    Groove groove = groove("gravel-road");
    Backing backing = backing(groove, "mill-race");
    List<BarPlan> ends =
        Stream.iterate(1, lap -> lap <= 100, lap -> lap + 1)
            .flatMap(lap -> backing.plan(lap).stream())
            .filter(plan -> plan.leadsOn() && !plan.crossing())
            .toList();
    long plain = ends.stream().filter(plan -> plan.fill().isEmpty()).count();
    assertThat(100.0 * plain / ends.size()).isBetween(5.0, 45.0);
  }
}

package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Fullness;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Meter;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The band's intensity over time, from its plan and on its notes. */
class ArcTest {

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  private static Backing backing(String chart, Groove groove) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    return Backing.of(BandMeasure.chart(chart, groove.name(), meter), Grooves.builtIn()).exact();
  }

  private static List<Moment> moments(String chart, int lap) {
    Groove plain = Grooves.builtIn().read(Grooves.PLAIN).value().orElseThrow();
    return backing(chart, plain).plan(lap).stream().map(BarPlan::moment).toList();
  }

  /** Statements at bars 1 and 5 of each section, replies at 3 and 7, and every line a crossing. */
  @Test
  void a_statement_has_room_a_reply_is_lifted_and_lines_are_built_into_and_dropped_after() {
    assertThat(moments("slow-tide", 2).subList(0, 8))
        .containsExactly(
            Moment.DROP,
            Moment.DROP,
            Moment.PLAIN,
            Moment.LIFT,
            Moment.ROOM,
            Moment.ROOM,
            Moment.BUILD,
            Moment.BUILD);
    assertThat(moments("slow-tide", 1).subList(0, 2)).containsExactly(Moment.ROOM, Moment.ROOM);
  }

  @Test
  void the_same_seed_gives_the_same_arc_and_the_same_notes() {
    Groove groove = Grooves.builtIn().read("penny-arcade").value().orElseThrow();
    Backing one = backing("mill-race", groove);
    Backing other = backing("mill-race", groove);
    for (int lap = 1; lap <= BandMeasure.LAPS; lap++) {
      assertThat(other.plan(lap)).isEqualTo(one.plan(lap));
      assertThat(other.lap(lap)).isEqualTo(one.lap(lap));
    }
  }

  @Test
  void what_the_chart_asks_for_holds_in_every_lap() {
    Groove groove = Grooves.builtIn().read("pogo-pier").value().orElseThrow();
    for (int lap = 1; lap <= BandMeasure.LAPS; lap++) {
      for (BarPlan plan : backing("mill-race", groove).plan(lap)) {
        assertThat(plan.band())
            .isEqualTo(plan.bar().section().band())
            .isNotEqualTo(Fullness.NORMAL);
      }
    }
  }

  /** What a band that is left normal gives in each lap of a piece of so many. */
  private static List<Double> levels(int laps) {
    Chart chart = BandMeasure.chart("lantern-quay", Grooves.PLAIN, Meter.COMMON);
    Arc arc = Arc.of(chart, Form.of(chart)).over(laps);
    Section section = chart.sections().get(0);
    return IntStream.rangeClosed(1, laps).mapToObj(lap -> arc.level(section, lap)).toList();
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 5, 6, 8, 12, 16, 24, 60})
  void a_piece_climbs_in_small_steps_to_a_high_point_just_before_its_end(int laps) {
    List<Double> levels = levels(laps);
    double high = levels.stream().max(Comparator.naturalOrder()).orElseThrow();
    assertThat(high).isEqualTo(levels.get(laps - 2)).isGreaterThan(levels.get(laps - 1));
    assertThat(levels.get(0)).isLessThan(high - 0.5);
    for (int lap = 1; lap < laps; lap++) {
      assertThat(Math.abs(levels.get(lap) - levels.get(lap - 1))).isLessThan(0.52);
    }
  }

  @Test
  void without_an_end_the_wave_goes_on_in_quarter_steps() {
    Chart chart = BandMeasure.chart("lantern-quay", Grooves.PLAIN, Meter.COMMON);
    Arc arc = Arc.of(chart, Form.of(chart));
    Section section = chart.sections().get(0);
    for (int lap = 2; lap <= 40; lap++) {
      assertThat(Math.abs(arc.level(section, lap) - arc.level(section, lap - 1))).isEqualTo(0.25);
    }
  }

  /** Notes times velocity, lap by lap, of a piece of eight laps. */
  @ParameterizedTest
  @MethodSource("grooves")
  void eight_laps_grow_little_by_little_towards_the_last_but_one(Groove groove) {
    Backing backing = backing("lantern-quay", groove).over(BandMeasure.LAPS);
    List<Integer> given =
        IntStream.rangeClosed(1, BandMeasure.LAPS)
            .mapToObj(lap -> BandMeasure.given(backing.lap(lap)))
            .toList();
    int most = given.stream().max(Comparator.naturalOrder()).orElseThrow();
    assertThat(given.indexOf(most)).isBetween(5, 6);
    assertThat(given.get(6)).isGreaterThan((int) (1.1 * given.get(0)));
    for (int lap = 1; lap < given.size(); lap++) {
      assertThat((double) given.get(lap) / given.get(lap - 1)).isBetween(0.75, 1.4);
    }
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void bass_and_chords_are_louder_at_a_replys_end_and_into_a_key_than_in_the_room_and_after(
      Groove groove) {
    Map<Moment, Double> mean = new EnumMap<>(Moment.class);
    Backing backing = backing("slow-tide", groove);
    Map<Moment, List<Double>> bars =
        IntStream.of(1, 2, 4, 6)
            .boxed()
            .flatMap(
                lap -> {
                  Score score = backing.lap(lap);
                  return backing.plan(lap).stream()
                      .map(plan -> Map.entry(plan.moment(), velocity(plan, score)));
                })
            .collect(
                Collectors.groupingBy(
                    Map.Entry::getKey,
                    Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
    bars.forEach(
        (moment, all) ->
            mean.put(moment, all.stream().mapToDouble(v -> v).average().orElseThrow()));
    assertThat(mean.get(Moment.LIFT)).isGreaterThan(1.05 * mean.get(Moment.ROOM));
    assertThat(mean.get(Moment.BUILD)).isGreaterThan(1.05 * mean.get(Moment.DROP));
  }

  /** The mean velocity of bass and chords, which no fill takes away. */
  private static double velocity(BarPlan plan, Score score) {
    return Stream.of(Role.BASS, Role.CHORDS)
        .flatMap(role -> score.part(role).orElseThrow().notes().stream())
        .filter(n -> !n.onset().isBefore(plan.bar().start()))
        .filter(n -> n.onset().isBefore(plan.bar().end()))
        .mapToInt(Note::velocity)
        .average()
        .orElse(0);
  }
}

package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.Fill;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the form does to the band: fills, stop time and the end. */
class StopsAndEndingsTest {
  private static final int MANY = 60;

  static Stream<Groove> grooves() {
    return Grooves.builtIn().all().stream();
  }

  private static Backing backing(Groove groove) {
    Meter meter = groove.meters().stream().findFirst().orElse(Meter.COMMON);
    return Backing.of(BandMeasure.chart("lantern-quay", groove.name(), meter), Grooves.builtIn())
        .exact();
  }

  private static List<Note> inBar(Score lap, BarPlan plan) {
    List<Note> notes = new ArrayList<>();
    lap.parts().stream().map(Part::notes).forEach(notes::addAll);
    return notes.stream()
        .filter(n -> !n.onset().isBefore(plan.bar().start()))
        .filter(n -> n.onset().isBefore(plan.bar().end()))
        .sorted()
        .toList();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void in_a_stop_the_band_strikes_once_and_is_silent_until_the_fill(Groove groove) {
    Backing backing = backing(groove);
    int stops = 0;
    for (int lap = 1; lap <= MANY; lap++) {
      for (BarPlan plan : backing.plan(lap)) {
        if (plan.stop()) {
          stops++;
          Meter meter = plan.bar().meter();
          Beats start = plan.bar().start();
          Beats half = start.plus(meter.barLength().dividedBy(2));
          List<Note> bar = inBar(backing.lap(lap), plan);
          assertThat(bar.get(0).onset()).isEqualTo(start);
          assertThat(bar.stream().filter(n -> n.onset().isBefore(half)))
              .allMatch(n -> n.onset().equals(start));
        }
      }
    }
    int due = groove.drums().stopPercent() * MANY * 2 / 100;
    assertThat(stops).isBetween(due / 3, 2 * due + 1);
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void into_a_section_there_is_a_fill_and_a_bigger_one_into_another_key(Groove groove) {
    Backing backing = backing(groove);
    for (BarPlan plan : backing.plan(1)) {
      assertThat(plan.fill().isPresent() || !plan.crossing()).isTrue();
      if (plan.leadsOn() && plan.fill().isPresent()) {
        Fill fill = plan.fill().orElseThrow();
        boolean big = plan.crossing() && !plan.stop();
        assertThat(fill.size()).isEqualTo(big ? Fill.Size.BIG : Fill.Size.MEDIUM);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void the_ending_is_the_home_chord_reached_by_small_steps_and_left_to_ring(Groove groove) {
    Backing backing = backing(groove);
    Score last = backing.lastLap(4);
    Beats line = backing.form().length();
    for (Role role : List.of(Role.DRUMS, Role.BASS, Role.CHORDS)) {
      assertThat(last.part(role).orElseThrow().notes())
          .filteredOn(n -> !n.onset().isBefore(line))
          .isNotEmpty()
          .allMatch(n -> n.onset().equals(line) && n.velocity() > 80);
    }
    List<Note> chords = last.part(Role.CHORDS).orElseThrow().notes();
    Note ending = chords.get(chords.size() - 1);
    Note before =
        chords.stream().filter(n -> n.onset().isBefore(line)).reduce((a, b) -> b).orElseThrow();
    assertThat(ending.length()).isGreaterThan(backing.form().bars().get(0).meter().beatLength());
    assertThat(Math.abs(ending.key() - before.key())).isLessThanOrEqualTo(7);
  }

  @Test
  void stops_and_endings_are_the_same_for_the_same_seed() {
    Groove groove = Grooves.builtIn().read("tin-kettle").value().orElseThrow();
    assertThat(backing(groove).plan(7)).isEqualTo(backing(groove).plan(7));
    assertThat(backing(groove).lastLap(7)).isEqualTo(backing(groove).lastLap(7));
  }
}

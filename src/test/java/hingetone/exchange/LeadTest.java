package hingetone.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.time.Beats;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class LeadTest {
  private static Lead lead(Chart chart) {
    Plan plan = Plan.of(chart, Form.of(chart));
    return new Lead(plan, MakerTest.maker(chart, plan), place -> place);
  }

  @Test
  void every_phrase_of_a_lap_is_heard_from_its_pickup_on() throws Exception {
    for (Path file : MakerTest.demoCharts()) {
      Lead lead = lead(MakerTest.read(file));
      Part part = lead.ofLap(1, Shown.ALL);
      assertThat(part.role()).isEqualTo(Role.LEAD);
      long tones =
          lead.plan().promptsOfLap(1).stream()
              .filter(p -> !p.isRest())
              .flatMap(p -> lead.maker().make(p).phrase().tones().stream())
              .mapToLong(tone -> tone.bend().isPresent() ? 2 : 1)
              .sum();
      assertThat(part.notes()).hasSize((int) tones);
      assertThat(part.notes().get(0).onset().isPositive()).isFalse();
    }
  }

  @Test
  void only_the_statements_or_only_the_crossings_are_heard_when_asked_for() throws Exception {
    for (Path file : MakerTest.demoCharts()) {
      Lead lead = lead(MakerTest.read(file));
      List<Note> all = lead.ofLap(2, Shown.ALL).notes();
      List<Note> statements = lead.ofLap(2, Shown.STATEMENTS).notes();
      List<Note> crossings = lead.ofLap(2, Shown.CROSSINGS).notes();
      assertThat(all).containsAll(statements).containsAll(crossings);
      assertThat(statements).hasSizeLessThan(all.size()).isNotEmpty();
      assertThat(crossings).hasSizeLessThan(statements.size()).isNotEmpty();
    }
  }

  @Test
  void swing_moves_the_off_beats_as_the_band_plays_them() throws Exception {
    Chart chart = MakerTest.read(MakerTest.demoCharts().get(0));
    Lead straight = lead(chart);
    Beats half = Beats.of(1, 2);
    Lead swung =
        new Lead(
            straight.plan(),
            straight.maker(),
            place -> place.fraction().equals(half) ? place.plus(Beats.of(1, 8)) : place);
    List<Note> before = straight.ofLap(1, Shown.ALL).notes();
    List<Note> after = swung.ofLap(1, Shown.ALL).notes();
    for (int i = 0; i < before.size(); i++) {
      boolean offBeat = before.get(i).onset().fraction().equals(half);
      Beats moved = after.get(i).onset().minus(before.get(i).onset());
      if (offBeat) {
        assertThat(moved).isEqualTo(Beats.of(1, 8));
      }
    }
  }
}

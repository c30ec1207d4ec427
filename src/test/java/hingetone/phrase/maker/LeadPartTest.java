package hingetone.phrase.maker;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

class LeadPartTest {
  private static LeadPart lead(Chart chart) {
    Plan plan = Plan.of(chart, Form.of(chart));
    return new LeadPart(plan, PhraseMakerTest.maker(chart, plan), place -> place);
  }

  private static Part heard(LeadPart lead, int lap, ExampleChoice shown) {
    return lead.ofLap(lap, shown.of(lead.plan(), Position.of(0, 1)));
  }

  @Test
  void only_the_next_crossing_is_heard_and_only_once() throws Exception {
    for (Path file : PhraseMakerTest.demoCharts()) {
      LeadPart lead = lead(PhraseMakerTest.read(file));
      int bars = lead.plan().form().bars().size();
      for (int bar = 0; bar <= bars; bar++) {
        Position from = Position.of(bar, 1);
        List<Integer> heard = new ArrayList<>();
        Predicate<Prompt> shown = ExampleChoice.NEXT_CROSSING.of(lead.plan(), from);
        for (int lap = 1; lap <= 3; lap++) {
          lead.plan().promptsOfLap(lap).stream()
              .filter(shown)
              .forEach(prompt -> heard.add(prompt.index()));
        }
        assertThat(heard).as("%s from bar %d", file, bar).hasSize(1);
        Prompt next = lead.plan().prompt(heard.get(0));
        assertThat(next.crossing()).isPresent();
        assertThat(next.speakFrom()).isGreaterThanOrEqualTo(from);
        for (int i = 1; i < next.index(); i++) {
          Prompt earlier = lead.plan().prompt(i);
          assertThat(earlier.crossing().isPresent() && earlier.speakFrom().compareTo(from) >= 0)
              .isFalse();
        }
      }
    }
  }

  @Test
  void every_phrase_of_a_lap_is_heard_from_its_pickup_on() throws Exception {
    for (Path file : PhraseMakerTest.demoCharts()) {
      LeadPart lead = lead(PhraseMakerTest.read(file));
      Part part = heard(lead, 1, ExampleChoice.ALL);
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
    for (Path file : PhraseMakerTest.demoCharts()) {
      LeadPart lead = lead(PhraseMakerTest.read(file));
      List<Note> all = heard(lead, 2, ExampleChoice.ALL).notes();
      List<Note> statements = heard(lead, 2, ExampleChoice.STATEMENTS).notes();
      List<Note> crossings = heard(lead, 2, ExampleChoice.CROSSINGS).notes();
      assertThat(all).containsAll(statements).containsAll(crossings);
      assertThat(statements).hasSizeLessThan(all.size()).isNotEmpty();
      assertThat(crossings).hasSizeLessThan(statements.size()).isNotEmpty();
    }
  }

  @Test
  void swing_moves_the_off_beats_as_the_band_plays_them() throws Exception {
    Chart chart = PhraseMakerTest.read(PhraseMakerTest.demoCharts().get(0));
    LeadPart straight = lead(chart);
    Beats half = Beats.of(1, 2);
    LeadPart swung =
        new LeadPart(
            straight.plan(),
            straight.maker(),
            place -> place.fraction().equals(half) ? place.plus(Beats.of(1, 8)) : place);
    List<Note> before = heard(straight, 1, ExampleChoice.ALL).notes();
    List<Note> after = heard(swung, 1, ExampleChoice.ALL).notes();
    for (int i = 0; i < before.size(); i++) {
      boolean offBeat = before.get(i).onset().fraction().equals(half);
      Beats moved = after.get(i).onset().minus(before.get(i).onset());
      if (offBeat) {
        assertThat(moved).isEqualTo(Beats.of(1, 8));
      }
    }
  }

  @Test
  void a_note_whose_start_swings_past_its_end_keeps_its_length() throws Exception {
    Chart chart = PhraseMakerTest.read(PhraseMakerTest.demoCharts().get(0));
    LeadPart straight = lead(chart);
    LeadPart late =
        new LeadPart(
            straight.plan(),
            straight.maker(),
            place -> place.denominator() > 1 ? place.plus(Beats.of(4)) : place);
    List<Note> before = heard(straight, 1, ExampleChoice.ALL).notes();
    assertThat(heard(late, 1, ExampleChoice.ALL).notes())
        .hasSameSizeAs(before)
        .allMatch(note -> note.length().isPositive());
  }
}

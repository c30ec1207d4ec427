package hingetone.plan;

import static hingetone.plan.PlanCharts.chart;
import static hingetone.plan.PlanCharts.leaving;
import static hingetone.plan.PlanCharts.section;
import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn.Role;
import hingetone.chart.Section;
import hingetone.theory.Key;
import hingetone.theory.Keys;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PlanTest {
  private static final String EIGHT = "Cm7 Cm7 Fm7 Cm7 Fm7 Fm7 Cm7 G7b9";

  private static final Section LOW =
      section("low", "C minor", "4/4", EIGHT, "statement 2, reply 2, statement 2 again, reply 2");
  private static final Section HIGH =
      section(
          "high",
          "Eb minor",
          "4/4",
          "Ebm7 Ab7 Ebm7 Ab7 Ebm7 Ab7 G7b9 G7b9",
          "statement 1, reply 1, reply 1, rest 1");

  private static Plan plan(Section... form) {
    Chart chart = chart(1, form);
    return Plan.of(chart, Form.of(chart));
  }

  private static List<String> lines(Plan plan, int lap) {
    return plan.promptsOfLap(lap).stream().map(PlanTest::line).toList();
  }

  private static String line(Prompt p) {
    return p.index()
        + " "
        + p.role().name().toLowerCase(java.util.Locale.ROOT)
        + p.repliesTo().map(i -> " to " + i).orElse("")
        + p.again().map(i -> " again " + i).orElse("")
        + Stream.of(p.speakFrom(), p.landOn(), p.stopBy())
            .map(at -> " " + at.bar() + ":" + at.beat())
            .reduce("", String::concat)
        + p.crossing().map(way -> " " + way).orElse("");
  }

  @Test
  void a_pickup_before_bar_one_starts_in_the_count_in() {
    assertThat(plan(LOW, HIGH).prompt(1).speakFrom())
        .isEqualTo(new Position(0, Beats.parse("3+1/2").orElseThrow()));
  }

  @Test
  void the_phrases_of_the_chart_become_prompts_with_room_for_each_pickup() {
    assertThat(lines(plan(LOW, HIGH, LOW), 1))
        .containsExactly(
            "1 statement 0:3+1/2 1:1 3:1",
            "2 reply to 1 3:1+1/2 3:3 4:3",
            "3 statement again 1 4:3+1/2 5:1 7:1",
            "4 reply to 3 7:1+1/2 7:3 8:3",
            "5 statement 8:3+1/2 9:1 10:1 RUN",
            "6 reply to 5 10:1+1/2 10:3 11:1",
            "7 reply to 5 11:1+1/2 11:3 12:1",
            "8 rest 12:1 12:1 12:3+1/2",
            "9 statement 12:3+1/2 13:1 14:1",
            "10 reply to 9 14:1+1/2 14:3 15:1",
            "11 reply to 9 15:1+1/2 15:3 16:1",
            "12 rest 16:1 16:1 16:3+1/2",
            "13 statement 16:3+1/2 17:1 19:1 HOLD",
            "14 reply to 13 19:1+1/2 19:3 20:3",
            "15 statement again 13 20:3+1/2 21:1 23:1",
            "16 reply to 15 23:1+1/2 23:3 24:3");
  }

  @Test
  void sections_with_room_for_one_phrase_answer_each_other() {
    Section[] steps = {
      section("a", "C minor", "4/4", "Cm7", ""),
      section("b", "Eb major", "4/4", "Ab", ""),
      section("c", "Bb major", "4/4", "F7", "")
    };
    assertThat(plan(steps).promptsOfLap(1).stream().map(Prompt::role))
        .containsExactly(Role.STATEMENT, Role.REPLY, Role.STATEMENT);
  }

  @Test
  void a_phrase_in_a_bar_shorter_than_a_breath_ends_after_its_landing() {
    Section short1 = section("a", "F phrygian", "1/8", "Fm7 Gb Fm7", "statement 1, reply 1");
    for (Prompt prompt : plan(short1).promptsOfLap(2)) {
      assertThat(prompt.landOn()).isLessThan(prompt.stopBy());
    }
  }

  @Test
  void laps_go_on_without_end_and_bars_count_on() {
    Plan plan = plan(LOW, HIGH);
    Prompt late = plan.promptsOfLap(1000).get(0);
    assertThat(late.landOn()).isEqualTo(Position.of(999 * 16 + 1, 1));
    assertThat(late.index()).isEqualTo(999 * 12 + 1);
    assertThat(plan.nextAfter(Position.of(999 * 16, 1))).isEqualTo(late);
    assertThat(plan.prompt(late.index())).isEqualTo(late);
  }

  @Test
  void a_section_is_left_in_the_ways_its_list_says_by_turns() {
    Plan plan = plan(leaving(LOW, Leave.RUN, Leave.HOLD), leaving(HIGH, Leave.HOLD));
    assertThat(Stream.of(1, 2, 3).map(lap -> crossings(plan, lap)))
        .containsExactly(
            List.of(Leave.RUN), List.of(Leave.HOLD, Leave.HOLD), List.of(Leave.HOLD, Leave.RUN));
  }

  private static List<Leave> crossings(Plan plan, int lap) {
    return plan.promptsOfLap(lap).stream().flatMap(p -> p.crossing().stream()).toList();
  }

  @Test
  void before_a_rest_in_the_new_key_the_last_phrase_rings_over_the_line() {
    Section resting = section("high", "Eb minor", "4/4", "Ebm7 Ebm7", "rest 1, statement 1");
    List<Prompt> prompts = plan(LOW, resting).promptsOfLap(1);
    assertThat(prompts.get(3).crossing()).isPresent();
    assertThat(prompts.get(3).stopBy()).isEqualTo(Position.of(9, 2));
    assertThat(prompts.get(4).speakFrom()).isEqualTo(Position.of(9, 2));
  }

  @Test
  void before_the_first_prompt_the_next_one_is_the_first() {
    Plan plan = plan(LOW, HIGH);
    assertThat(plan.nextAfter(Position.of(-1, 1)).index()).isEqualTo(1);
  }

  @Test
  void phrases_are_the_players_unless_given_to_the_machine() {
    Plan plan = plan(LOW, HIGH);
    assertThat(plan.promptsOfLap(1)).allMatch(p -> p.by() == Speaker.PLAYER);
    assertThat(plan.withMachine(Set.of(Role.STATEMENT)).promptsOfLap(2))
        .allMatch(p -> (p.by() == Speaker.MACHINE) == (p.role() == Role.STATEMENT));
  }

  @Test
  void where_the_chart_says_nothing_the_opening_comes_back_in_the_other_key() {
    for (Key from : Keys.MINOR) {
      for (Key to : Keys.MINOR) {
        Plan plan =
            plan(
                section("low", from.toString(), "4/4", EIGHT, ""),
                section("high", to.toString(), "4/4", EIGHT, ""));
        List<Prompt> high =
            plan.promptsOfLap(1).stream().filter(p -> p.section().equals("high")).toList();
        assertThat(high.get(0).again()).as("%s to %s", from, to).isEqualTo(Optional.of(1));
        assertThat(high.get(0).ending()).contains(ReturnEnding.DIFFERENT);
        assertThat(plan.promptsOfLap(2).get(0).again()).contains(1);
      }
    }
  }
}

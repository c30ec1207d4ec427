package hingetone.drill;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.journal.Activity;
import hingetone.text.reading.Source;
import hingetone.time.Tempo;
import java.util.List;
import org.junit.jupiter.api.Test;

class DrillTest {
  private static Chart chart(String second) {
    String text =
        """
        title: Cold stove
        sections:
          one: {key: F minor, bars: '| Fm7 | Bbm7 |'}
          two: {key: %s, bars: '| Gm7 | C7 | Gm7 | C7 | Gm7 | C7 |'}
        """;
    return ChartReader.read(new Source("", text.formatted(second))).value().orElseThrow();
  }

  private static Drill drill() {
    return Drill.of(Exercise.of(Activity.LANDING, chart("G minor")), Tempo.of(100));
  }

  private static Drill after(Drill drill, double... scores) {
    Drill next = drill;
    for (double score : scores) {
      next = next.after(new Round(score, ""));
    }
    return next;
  }

  @Test
  void three_steps_up_are_the_next_level_at_the_first_tempo() {
    Drill harder = after(drill(), 1, 1, 1, 1, 1, 1);
    assertThat(harder.level()).isEqualTo(1);
    assertThat(harder.ladder().now()).isEqualTo(Tempo.of(100));
    assertThat(harder.ladder().cleanTwice()).contains(Tempo.of(110));
    Drill last = harder;
    for (int i = 0; i < 40; i++) {
      last = after(last, 1);
    }
    assertThat(last.level()).isEqualTo(last.exercise().levels().size() - 1);
  }

  @Test
  void the_result_is_a_sentence_and_the_advice_one_thing() {
    assertThat(drill().result()).isEqualTo("No round was played.");
    assertThat(after(drill(), 1, 1, 0.4).result())
        .isEqualTo("3 rounds, 80 % went well, clean twice in a row at 100.");
    assertThat(after(drill(), 0.2).advice())
        .isEqualTo("Next time begin slower, at 95, and stay at: a pickup of half a beat.");
    assertThat(after(drill(), 1, 1).advice())
        .isEqualTo("Next time begin at 100 with: a pickup of half a beat.");
  }

  @Test
  void every_level_of_an_exercise_has_the_same_bars() {
    for (Activity activity : Activity.values()) {
      if (activity.isDrill()) {
        Exercise exercise = Exercise.of(activity, chart("G minor"));
        List<Integer> bars =
            exercise.levels().stream()
                .map(l -> l.chart().form().stream().mapToInt(s -> s.bars().size()).sum())
                .distinct()
                .toList();
        assertThat(bars).as("%s", activity).hasSize(1);
        assertThat(exercise.goal()).endsWith(".");
      }
    }
  }

  @Test
  void a_crossing_needs_two_keys() {
    assertThat(Exercise.problem(Activity.CROSSING, chart("F minor"))).isPresent();
    assertThat(Exercise.problem(Activity.LANDING, chart("F minor"))).isEmpty();
    Exercise crossing = Exercise.of(Activity.CROSSING, chart("G minor"));
    assertThat(crossing.levels().get(0).chart().form())
        .extracting(section -> section.bars().size())
        .containsExactly(2, 4);
  }

  @Test
  void a_players_own_grades_are_scores() {
    assertThat(Round.graded(1).score()).isZero();
    assertThat(Round.graded(4).score()).isEqualTo(0.75);
    assertThat(Round.graded(5).score()).isEqualTo(1);
  }
}

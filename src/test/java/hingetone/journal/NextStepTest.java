package hingetone.journal;

import static hingetone.journal.PracticeLogTest.entry;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NextStepTest {
  private static Instant day(int day) {
    return entry(day, Activity.PLAY, "", null).start();
  }

  @Test
  void each_time_that_it_goes_well_the_pause_doubles_and_once_badly_begins_again() {
    List<LogEntry> entries = new ArrayList<>();
    List<Integer> pauses = new ArrayList<>();
    for (double score : new double[] {0.5, 0.9, 0.8, 1, 0.79, 1, 1, 1, 1, 1, 1}) {
      entries.add(entry(entries.size(), Activity.CROSSING, "Wet slate", score));
      pauses.add(Standing.of(entries).get(0).days());
    }
    assertThat(pauses).containsExactly(1, 2, 4, 8, 1, 2, 4, 8, 16, 32, 32);
  }

  @Test
  void what_is_due_the_longest_by_its_own_pause_comes_first_and_of_two_alike_the_weaker() {
    List<LogEntry> entries =
        List.of(
            entry(0, Activity.LANDING, "Wet slate", 0.9),
            entry(0, Activity.CROSSING, "Wet slate", 0.4),
            entry(0, Activity.ENDINGS, "Tin roof", 0.3));
    NextStep next = NextStep.of(entries, day(3)).orElseThrow();
    assertThat(next.activity()).isEqualTo(Activity.ENDINGS);
    assertThat(next.standing().orElseThrow().overdue(day(3))).isCloseTo(3, within(1e-9));
    assertThat(Standing.of(entries).get(0).overdue(day(3))).isCloseTo(1.5, within(1e-9));
  }

  @Test
  void where_nothing_is_due_an_exercise_not_done_yet_with_the_chart_played_last_comes() {
    assertThat(NextStep.of(List.of(), day(1))).isEmpty();
    List<LogEntry> entries =
        List.of(
            entry(0, Activity.LANDING, "Wet slate", 0.9),
            entry(1, Activity.PLAY, "Wet slate", null));
    NextStep next = NextStep.of(entries, day(1)).orElseThrow();
    assertThat(next.activity()).isEqualTo(Activity.CROSSING);
    assertThat(next.standing()).isEmpty();
  }

  /**
   * Three learners over thirty days who always do what comes next: one who can do all, one who can
   * do nothing, one who is weak in one exercise. Practice goes where it is needed.
   */
  @Test
  void a_simulated_learner_is_led_to_what_is_weak() {
    assertThat(done(1, 1)).isLessThan(12);
    assertThat(done(0, 0)).isEqualTo(60);
    List<LogEntry> mixed = practise(1, 0);
    long weak = mixed.stream().filter(e -> e.activity() == Activity.CROSSING).count();
    for (Activity other : List.of(Activity.LANDING, Activity.EXCHANGE)) {
      assertThat(mixed.stream().filter(e -> e.activity() == other).count()).isLessThan(weak / 4);
    }
  }

  private static long done(double others, double crossing) {
    return practise(others, crossing).stream()
        .filter(e -> e.activity() == Activity.LANDING || e.activity() == Activity.CROSSING)
        .count();
  }

  /** Up to eight exercises a day, as long as something is due. */
  private static List<LogEntry> practise(double others, double crossing) {
    Random random = new Random(7);
    List<LogEntry> entries = new ArrayList<>();
    entries.add(entry(0, Activity.PLAY, "Wet slate", null));
    for (int day = 1; day <= 30; day++) {
      for (int round = 0; round < 8; round++) {
        NextStep next = NextStep.of(entries, day(day)).orElse(null);
        if (next == null) {
          break;
        }
        double skill = next.activity() == Activity.CROSSING ? crossing : others;
        double score = skill == 1 ? 0.8 + 0.2 * random.nextDouble() : 0.79 * random.nextDouble();
        LogEntry done = entry(day, next.activity(), next.chart(), score);
        entries.removeIf(e -> e.activity() == done.activity() && e.start().equals(done.start()));
        entries.add(done);
      }
    }
    return entries;
  }

  @Test
  void weeks_begin_on_monday_and_empty_ones_are_there() {
    List<PracticeWeek> weeks =
        PracticeWeek.of(
            List.of(
                entry(6, Activity.PLAY, "Wet slate", 0.5),
                entry(6, Activity.TAKE, "Wet slate", null),
                entry(6, Activity.LANDING, "Tin roof", 1.0),
                entry(21, Activity.EAR, "Tin roof", 0.2)),
            ZoneOffset.UTC);
    assertThat(weeks)
        .extracting(week -> week.monday().toString())
        .containsExactly("2026-03-02", "2026-03-09", "2026-03-16", "2026-03-23");
    assertThat(weeks).extracting(PracticeWeek::minutes).containsExactly(20L, 0L, 0L, 10L);
    assertThat(weeks.get(0).landings()).hasValue(0.75);
    assertThat(weeks.get(3).landings()).isEmpty();
    assertThat(weeks.get(0).tempos()).containsOnlyKeys("Tin roof", "Wet slate");
  }
}

package hingetone.drill;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn;
import hingetone.journal.Activity;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.take.PlacedNote;
import hingetone.text.reading.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Scripted players: who does what is asked is clean, who does not is not. */
class RoundScoreTest {
  private static final double BEAT_MS = 600;

  private static final Chart CHART =
      ChartReader.read(
              new Source(
                  "",
                  """
                  title: Wet slate
                  tempo: 100
                  sections:
                    low: {key: C minor, bars: '| Cm7 | Fm7 | Cm7 | G7 |'}
                    high: {key: Eb minor, bars: '| Ebm7 | Abm7 | Ebm7 | Bb7 |'}
                  """))
          .value()
          .orElseThrow();

  private final List<PlacedNote> notes = new ArrayList<>();
  private final List<PlacedNote> machine = new ArrayList<>();

  private static Exercise exercise(Activity activity) {
    return Exercise.of(activity, CHART);
  }

  private static Plan plan(Exercise exercise, int level) {
    Chart chart = exercise.levels().get(level).chart();
    return Plan.of(chart, Form.of(chart));
  }

  private static List<Prompt> prompts(Exercise exercise, int level) {
    return plan(exercise, level).promptsOfLap(3).stream().filter(p -> !p.isRest()).toList();
  }

  private static double place(Exercise exercise, Prompt prompt) {
    return plan(exercise, 0).form().quarters(prompt.landOn()).toDouble();
  }

  private static PlacedNote note(double at, double length, int key) {
    return new PlacedNote(at, at + length, key, key, 90);
  }

  private void play(double at, double length, int key) {
    notes.add(note(at, length, key));
  }

  private Round round(Exercise exercise, int level) {
    Performed played = new Performed(plan(exercise, level), 3, 0, BEAT_MS, notes, machine);
    return RoundScore.of(exercise, level, played);
  }

  /** A pickup and a landing for each prompt, so many milliseconds late. */
  private Round landings(java.util.function.DoubleSupplier lateMs) {
    Exercise exercise = exercise(Activity.LANDING);
    notes.clear();
    for (Prompt prompt : prompts(exercise, 0)) {
      double late = lateMs.getAsDouble() / BEAT_MS;
      double place = place(exercise, prompt);
      boolean high = prompt.section().equals("high");
      play(place - 0.5 + late, 0.4, high ? 70 : 67);
      play(place + late, 1.5, high ? 75 : 72);
    }
    return round(exercise, 0);
  }

  @Test
  void silence_scores_nothing_in_every_exercise() {
    for (Activity activity : Activity.values()) {
      if (activity.isDrill()) {
        Exercise exercise = exercise(activity);
        for (int level = 0; level < exercise.levels().size(); level++) {
          assertThat(round(exercise, level)).isEqualTo(new Round(0, "nothing was heard"));
        }
      }
    }
  }

  @Test
  void wild_notes_are_never_clean() {
    for (Activity activity : Activity.values()) {
      if (activity.isDrill() && activity != Activity.SILENCE) {
        Random random = new Random(11);
        notes.clear();
        Exercise exercise = exercise(activity);
        double end = 3 * plan(exercise, 0).form().length().toDouble();
        for (double at = 60; at < end; at += 0.3 + random.nextDouble()) {
          play(at, 0.2, 50 + random.nextInt(30));
        }
        machine.add(note(64, 1, 60));
        assertThat(round(exercise, 0).score()).as("%s", activity).isLessThan(TempoLadder.CLEAN);
      }
    }
  }

  @Test
  void a_player_who_lies_back_evenly_is_not_marked_down() {
    assertThat(landings(() -> 0).score()).isEqualTo(1);
    assertThat(landings(() -> 55).score()).isEqualTo(1);
    assertThat(landings(() -> 55).words()).endsWith("evenly 55 ms behind");
    assertThat(landings(() -> -50).score()).isEqualTo(1);
    Random random = new Random(2);
    assertThat(landings(() -> 30 + 15 * random.nextGaussian()).score()).isGreaterThan(0.8);
    assertThat(landings(() -> 150 * random.nextGaussian()).score()).isLessThan(0.8);
  }

  @Test
  void a_crossing_is_clean_as_it_was_asked_and_in_the_new_key() {
    Exercise exercise = exercise(Activity.CROSSING);
    Form form = plan(exercise, 0).form();
    assertThat(form.bars()).hasSize(8);
    for (int level : List.of(0, 1)) {
      boolean hold = level == 0;
      notes.clear();
      for (int bar : List.of(21, 25)) {
        double line = form.startOf(bar).toDouble();
        if (hold) {
          play(line - 1, 3, 70); // Bb belongs to both keys
        } else {
          for (int i = 0; i < 8; i++) {
            play(line - 4 + i / 2.0, 0.5, 60 + i);
          }
          play(line, 1, bar == 21 ? 63 : 60);
        }
      }
      assertThat(round(exercise, level).score()).as(hold ? "held" : "run").isEqualTo(1);
      assertThat(round(exercise, 1 - level).score()).as("the other way").isLessThan(0.5);
    }
    assertThat(exercise.levels().get(0).chart().form())
        .allMatch(section -> section.leave().equals(List.of(Leave.HOLD)));
  }

  @Test
  void a_reply_that_takes_up_the_rhythm_is_clean_and_an_echo_or_none_is_not() {
    Exercise exercise = exercise(Activity.EXCHANGE);
    assertThat(exchange(exercise, new int[] {60, 63, 67, 65}, new int[] {67, 65, 63, 60}).score())
        .isEqualTo(1);
    int[] echo = {60, 63, 67, 65};
    assertThat(exchange(exercise, echo, echo).score()).isLessThan(0.8);
    assertThat(exchange(exercise, echo, new int[0]).score()).isEqualTo(0);
  }

  private Round exchange(Exercise exercise, int[] statement, int[] reply) {
    notes.clear();
    for (Prompt prompt : prompts(exercise, 0)) {
      boolean asks = prompt.role() == PhraseTurn.Role.STATEMENT;
      phrase(place(exercise, prompt), asks ? statement : reply);
    }
    return round(exercise, 0);
  }

  /** Eighths from the landing on, the last one longer. */
  private void phrase(double place, int... keys) {
    for (int i = 0; i < keys.length; i++) {
      play(place + i / 2.0, i == keys.length - 1 ? 1 : 0.5, keys[i]);
    }
  }

  @Test
  void what_comes_back_wants_its_opening_and_another_ending_or_an_octave() {
    int[] first = {60, 63, 65, 67, 70, 67};
    int[] otherEnding = {60, 63, 65, 63, 61, 60};
    int[] octave = {72, 75, 77, 79, 82, 79};
    assertThat(returns(Activity.ENDINGS, first, otherEnding).score()).isEqualTo(1);
    assertThat(returns(Activity.ENDINGS, first, first).score()).isEqualTo(0.5);
    assertThat(returns(Activity.ENDINGS, first, 71, 60, 72, 61, 73, 60).score()).isZero();
    assertThat(returns(Activity.OCTAVE, first, octave).score()).isEqualTo(1);
    assertThat(returns(Activity.OCTAVE, first, first).score()).isEqualTo(0.3);
  }

  private Round returns(Activity activity, int[] first, int... again) {
    Exercise exercise = exercise(activity);
    notes.clear();
    for (Prompt prompt : prompts(exercise, 0)) {
      phrase(place(exercise, prompt), prompt.again().isPresent() ? again : first);
    }
    return round(exercise, 0);
  }

  @Test
  void by_ear_the_notes_count_in_any_octave_and_the_rhythm_is_free() {
    Exercise exercise = exercise(Activity.EAR);
    assertThat(exercise.machineAsks()).isTrue();
    for (Prompt prompt : prompts(exercise, 0)) {
      double place = place(exercise, prompt);
      if (prompt.role() == PhraseTurn.Role.STATEMENT) {
        for (int i = 0; i < 4; i++) {
          machine.add(note(place + i / 2.0, 0.5, 60 + 2 * i));
        }
      } else {
        for (int i = 0; i < 4; i++) {
          play(place + i / 3.0, 0.3, 72 + 2 * i);
        }
      }
    }
    assertThat(round(exercise, 0).score()).isEqualTo(1);
    notes.replaceAll(n -> note(n.at(), 0.3, n.pitch() + 1));
    assertThat(round(exercise, 0).score()).isZero();
  }

  @Test
  void after_a_silence_one_is_there_or_not() {
    Exercise exercise = exercise(Activity.SILENCE);
    Form form = plan(exercise, 0).form();
    for (int bar = 16; bar <= 25; bar++) {
      play(form.startOf(bar).toDouble() + 0.05, 1, 60);
      play(form.startOf(bar).toDouble() + 2.05, 1, 63);
    }
    assertThat(round(exercise, 0).score()).isEqualTo(1);
    notes.replaceAll(n -> note(n.at() + (n.pitch() == 60 ? 0.22 : 0), 1, n.pitch()));
    assertThat(round(exercise, 0).score()).isLessThan(0.6);
  }

  @Test
  void a_figure_of_three_over_the_bar_is_clean_and_one_of_four_is_not() {
    Exercise exercise = exercise(Activity.OFFSET);
    double start = plan(exercise, 0).form().startOf(17).toDouble();
    for (int figure : List.of(3, 4)) {
      notes.clear();
      for (int i = 0; i < 64; i++) {
        play(start + i / 2.0, 0.5, 60 + 3 * (i % figure));
      }
      assertThat(round(exercise, 0).score() >= TempoLadder.CLEAN).isEqualTo(figure == 3);
    }
  }
}

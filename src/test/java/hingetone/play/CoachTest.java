package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.drill.Drill;
import hingetone.drill.Exercise;
import hingetone.groove.Grooves;
import hingetone.journal.Activity;
import hingetone.midi.Received;
import hingetone.plan.ExampleChoice;
import hingetone.screen.Message;
import hingetone.sequencer.Command;
import hingetone.sequencer.SequencerEvent;
import hingetone.text.reading.Source;
import hingetone.time.Beats;
import hingetone.time.Position;
import hingetone.time.Tempo;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

class CoachTest {
  private static final long SECOND = 1_000_000_000;
  private static final int BARS = 4;

  private static final Chart CHART =
      ChartReader.read(
              new Source(
                  "",
                  """
                  title: Cold stove
                  tempo: 60
                  sections:
                    one: {key: F minor, bars: '| Fm7 | C7 |'}
                    two: {key: G minor, bars: '| Gm7 | D7 |'}
                  """))
          .value()
          .orElseThrow();

  private final List<String> said = new ArrayList<>();
  private final List<Command> sent = new ArrayList<>();
  private final List<Optional<ExampleChoice>> shown = new ArrayList<>();
  private final List<Drill> kept = new ArrayList<>();
  private boolean over;
  private long now = SECOND;

  private final Coach.Band band =
      new Coach.Band() {
        @Override
        public void follow(Arrangement other) {
          shown.add(other.shown());
        }

        @Override
        public void send(Command command) {
          sent.add(command);
        }

        @Override
        public void show(Message message) {
          if (message instanceof Message.Notice notice) {
            said.add(notice.words());
          } else if (message instanceof Message.Question question) {
            said.add(question.words());
          }
          over |= message instanceof Message.Over;
        }
      };

  private static Arrangement arrangement(Exercise.Level level, Optional<ExampleChoice> examples) {
    Backing backing = Backing.of(level.chart(), Grooves.builtIn());
    Arrangement.Music music =
        new Arrangement.Music("plain", (s, f, p) -> backing::lap, Optional::empty);
    return Arrangement.of(
        level.chart(), false, "plain", CompletableFuture.completedFuture(music), examples);
  }

  private Coach coach(Activity activity, boolean listens) {
    Exercise exercise = Exercise.of(activity, CHART);
    Coach.Lesson lesson =
        new Coach.Lesson(
            Drill.of(exercise, Tempo.of(60)),
            Duration.ofSeconds(75),
            listens,
            CoachTest::arrangement,
            kept::add);
    Arrangement first = arrangement(exercise.levels().get(0), Coach.examples());
    return new Coach(lesson, first, band, () -> now, Runnable::run);
  }

  /** A lap of beats, each a second; on each bar line a note, where the player plays. */
  private void lap(Coach coach, int lap, boolean plays) {
    for (int i = 0; i < 4 * BARS; i++) {
      int bar = (lap - 1) * BARS + i / 4 + 1;
      if (i % 4 == 0) {
        coach.hear(new SequencerEvent.BarLine(now, lap, bar, 0));
      }
      coach.hear(new SequencerEvent.Beat(now, Position.of(bar, i % 4 + 1)));
      if (plays && i % 8 == 0) {
        coach.play(new Received(now, 0x90, 0, i % 16 == 0 ? 65 : 67, 90));
        coach.play(new Received(now + SECOND / 2, 0x80, 0, i % 16 == 0 ? 65 : 67, 0));
      }
      coach.beat(Beats.of(4L * (bar - 1) + i % 4));
      now += SECOND;
    }
  }

  @Test
  void an_example_a_warm_up_then_rounds_that_the_player_grades() {
    Coach coach = coach(Activity.LANDING, false);
    lap(coach, 1, false);
    assertThat(said)
        .containsExactly(
            "Lead into each landing with a pickup, and put the main note on beat 1.",
            "Your turn: warm up. A pickup of half a beat.");
    assertThat(shown).containsExactly(Optional.empty());
    lap(coach, 2, false);
    assertThat(said.get(2)).isEqualTo("Now it counts.");
    lap(coach, 3, false);
    assertThat(kept).isEmpty();
    lap(coach, 4, false);
    assertThat(said.get(3)).startsWith("How was that round?");
    coach.grade(5);
    coach.grade(5);
    assertThat(said.get(5)).isEqualTo("Graded 5. Up to 63.");
    assertThat(sent).contains(new Command.SetTempo(Tempo.of(63)));
    coach.grade(1);
    assertThat(said.get(6)).isEqualTo("Graded 1. Down to 60.");
    assertThat(kept).hasSize(3);
    lap(coach, 5, false);
    lap(coach, 6, false);
    assertThat(over).as("the last grade is waited for").isFalse();
    coach.grade(3);
    assertThat(over).isTrue();
  }

  @Test
  void who_gives_no_grade_any_more_is_waited_for_a_round_long() {
    Coach coach = coach(Activity.LANDING, false);
    for (int lap = 1; lap <= 6; lap++) {
      lap(coach, lap, false);
    }
    assertThat(over).isFalse();
    lap(coach, 7, false);
    assertThat(over).isTrue();
    assertThat(kept).isEmpty();
  }

  @Test
  void what_was_played_is_scored_a_beat_after_the_round() {
    Coach coach = coach(Activity.LANDING, true);
    for (int lap = 1; lap <= 4; lap++) {
      lap(coach, lap, true);
    }
    assertThat(said.get(3)).isEqualTo("2 of 2 landings on their place.");
    assertThat(kept.get(0).score()).contains(1.0);
  }

  @Test
  void the_band_falls_silent_where_that_is_the_exercise_and_by_ear_the_machine_goes_on_asking() {
    lap(coach(Activity.SILENCE, true), 1, false);
    assertThat(sent).contains(new Command.SilentBars(1, 1));
    shown.clear();
    lap(coach(Activity.EAR, true), 1, false);
    assertThat(shown).containsExactly(Optional.of(ExampleChoice.STATEMENTS));
  }
}

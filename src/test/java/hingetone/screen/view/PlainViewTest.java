package hingetone.screen.view;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.plan.Plan;
import hingetone.score.Role;
import hingetone.screen.Action;
import hingetone.screen.ChartFacts;
import hingetone.screen.Examples;
import hingetone.screen.FactFinder;
import hingetone.screen.Message;
import hingetone.screen.State;
import hingetone.screen.Statuses;
import hingetone.screen.Update;
import hingetone.sequencer.Command;
import hingetone.sequencer.Status;
import hingetone.time.Beats;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PlainViewTest {
  private static List<String> heard(int fromQuarter, int toQuarter) {
    List<String> lines = new ArrayList<>();
    State state = Examples.playing(1, "1");
    for (int i = fromQuarter; i < toQuarter; i++) {
      Message beat = new Message.Beat(Beats.of(i));
      State after = Update.apply(state, beat).state();
      for (String line : PlainView.lines(state, beat, after)) {
        lines.add(after.position() + ": " + line);
      }
      state = after;
    }
    return lines;
  }

  @Test
  void the_count_in_and_the_first_bars_are_spoken_in_time() {
    assertThat(String.join("\n", heard(-4, 8)))
        .isEqualTo(
            """
            bar 0 beat 1: Count-in 1.
            bar 0 beat 2: Count-in 2.
            bar 0 beat 2: You: statement in 2 beats, land on E or G in 3 beats.
            bar 0 beat 3: Count-in 3.
            bar 0 beat 4: Count-in 4.
            bar 0 beat 4: Next Em7.
            bar 1 beat 1: Lap 1, section low in E minor, Em7.
            bar 2 beat 2: Next A7.
            bar 2 beat 4: You: reply in 2 beats, land on E or G in 3 beats.
            bar 2 beat 4: Next Em7.""");
  }

  @Test
  void a_crossing_is_told_four_bars_and_one_bar_before() {
    List<String> lines = heard(0, 36);
    assertThat(lines)
        .contains(
            "bar 5 beat 1: In 4 bars G minor. Stays: D G.",
            "bar 8 beat 1: Last bar before G minor.",
            "bar 9 beat 1: Lap 1, section high in G minor, Gm7.");
  }

  @Test
  void a_way_home_is_told_like_a_crossing() {
    Chart chart =
        Examples.chart(
            "sections:\n  one:\n    key: F minor\n    bars: \"| Fm7 | Bbm7 | Fm7 | % | % | C7b9 |\"\n");
    Form form = Form.of(chart);
    Ground ground = Ground.of(form, Fretboard.of(chart.tuning(), chart.capo()));
    ChartFacts facts = FactFinder.of("", "", ground, Plan.of(chart, form));
    State state = Examples.playing(2, "4").withFacts(facts);
    Message beat = new Message.Beat(Beats.of(8));
    assertThat(PlainView.lines(state, beat, Update.apply(state, beat).state()))
        .contains("In 4 bars F minor, home. Stays: F Ab Bb C.")
        .anyMatch(line -> line.startsWith("Hold: "))
        .anyMatch(line -> line.startsWith("Run: "));
    State later = Update.apply(state, new Message.Beat(Beats.of(16))).state();
    assertThat(Examples.picture(later, 24, 80))
        .contains("C7b9 → F minor, home  in 2 bars   ◆ stays F Ab Bb C");
    assertThat(facts.lineInto(4)).isEmpty();
    assertThat(facts.crossingInto(7)).isEmpty();
  }

  @Test
  void changes_of_the_band_are_told() {
    State state = Examples.playing(1, "1");
    Status changed = Statuses.without(Role.BASS, Tempo.of(96), new Command.Loop(7, 10));
    Message message = new Message.Changed(changed);
    assertThat(PlainView.lines(state, message, Update.apply(state, message).state()))
        .containsExactly("Tempo 96.", "Bass out.", "Loop of bars 7 to 10.");
    Message more = new Message.Changed(Statuses.withEverything());
    assertThat(PlainView.lines(state, more, Update.apply(state, more).state()))
        .containsExactly(
            "Bass out.",
            "Examples out.",
            "Loop of bars 1 to 4.",
            "Keys shifted by 2 half steps.",
            "Metronome: every other bar.",
            "Drums at 96.");
  }

  private static List<String> typed(State state, String word) {
    Message stroke = new Message.Stroke(word, 0);
    return PlainView.lines(state, stroke, Update.apply(state, stroke).state());
  }

  @Test
  void help_in_any_form_lists_a_word_for_every_key_and_what_is_unknown_is_answered() {
    State state = Examples.playing(1, "1");
    for (String help : List.of("help", "?", "h")) {
      assertThat(typed(state, help)).hasSize(Action.groups().size());
      for (Action action : Action.values()) {
        assertThat(String.join("\n", typed(state, help)))
            .contains(action.id() + ", " + action.words());
      }
    }
    assertThat(typed(state, "trumpet"))
        .containsExactly("Nothing is called \"trumpet\". The word help lists what is.");
    State helped = Update.apply(state, new Message.Stroke("help", 0)).state();
    assertThat(typed(helped, "trumpet")).isEqualTo(typed(state, "trumpet"));
    assertThat(typed(helped, "esc")).isEmpty();
    assertThat(typed(state, "drums-softer")).isEmpty();
  }

  @Test
  void a_word_does_what_its_key_does() {
    State state = Examples.playing(1, "1");
    for (Action action : Action.values()) {
      assertThat(Action.ofKey(action.id(), state.settings())).as(action.id()).contains(action);
      assertThat(Action.ofKey(action.keys().get(0), state.settings())).contains(action);
    }
  }

  @Test
  void faults_notices_and_phases_are_told() {
    State state = Examples.playing(1, "1");
    for (Message message :
        List.of(
            new Message.Fault(Optional.of("The port is gone.")),
            new Message.Notice("Time for a break."),
            new Message.Changed(Statuses.moving(Status.Motion.PAUSED)))) {
      assertThat(PlainView.lines(state, message, Update.apply(state, message).state())).hasSize(1);
    }
  }
}

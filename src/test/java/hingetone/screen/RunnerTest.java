package hingetone.screen;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.screen.picture.Size;
import hingetone.sequencer.Command;
import hingetone.sequencer.Status;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RunnerTest {
  private final List<Message> told = new ArrayList<>();
  private final List<State> shown = new ArrayList<>();
  private final List<Effect> performed = new ArrayList<>();
  private final List<List<Effect>> aside = new ArrayList<>();
  private final Runner runner =
      new Runner(
          Examples.playing(1, "1"),
          new Viewer() {
            @Override
            public void told(State before, Message message, State after) {
              told.add(message);
            }

            @Override
            public void show(State state) {
              shown.add(state);
            }

            @Override
            public void stepAside(State state) {
              aside.add(List.copyOf(performed));
            }
          },
          performed::add);

  @Test
  void of_waiting_ticks_only_the_newest_is_taken_and_beats_are_never_dropped() {
    Message beat = new Message.Beat(Beats.of(2));
    Message newest = new Message.Playhead(Beats.of(5, 2));
    Message quit = new Message.Stroke("q", 0);
    runner.offer(new Message.Beat(Beats.of(1)));
    runner.offer(new Message.Playhead(Beats.of(3, 2)));
    runner.offer(beat);
    runner.offer(new Message.Playhead(Beats.of(9, 4)));
    runner.offer(newest);
    runner.offer(quit);
    runner.run();
    assertThat(told).containsExactly(new Message.Beat(Beats.of(1)), beat, newest, quit);
  }

  @Test
  void nothing_is_done_after_quitting() {
    runner.offer(new Message.Stroke("q", 0));
    runner.offer(new Message.Stroke("d", 0));
    runner.run();
    assertThat(performed).containsExactly(new Effect.Quit());
    assertThat(shown).hasSize(1);
  }

  @Test
  void of_a_hundred_thousand_keys_and_pedals_few_wait_and_the_last_one_counts() {
    Message beat = new Message.Beat(Beats.of(1));
    Message notice = new Message.Notice("Hello.");
    runner.offer(beat);
    for (int i = 0; i < 100_000; i++) {
      runner.offer(i % 3 == 0 ? new Message.Pedal("cc 64", i) : new Message.Stroke("d", i));
      runner.offer(new Message.Changed(Examples.stopped().status()));
      runner.offer(new Message.Resized(new Size(24, 80)));
    }
    runner.offer(notice);
    runner.offer(new Message.Stroke("q", 0));
    runner.run();
    assertThat(told).hasSize(4 + Inbox.MOST_KEYS).startsWith(beat).contains(notice);
    assertThat(told.get(told.size() - 1)).isEqualTo(new Message.Stroke("q", 0));
    assertThat(performed).contains(new Effect.Quit());
  }

  @Test
  void stepping_aside_comes_after_what_was_asked_for_before() {
    runner.offer(new Message.Stroke("ctrl z", 0));
    runner.offer(new Message.Changed(Statuses.moving(Status.Motion.PAUSED)));
    runner.offer(new Message.Stroke("q", 0));
    runner.run();
    assertThat(aside)
        .containsExactly(List.of(new Effect.Send(new Command.Pause()), new Effect.StepAside()));
  }
}

package hingetone.screen;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RunnerTest {
  private final List<Message> told = new ArrayList<>();
  private final List<State> shown = new ArrayList<>();
  private final List<Effect> performed = new ArrayList<>();
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
}

package hingetone.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Consumer;

/**
 * The loop: messages in, effects out, the state shown after each batch.
 *
 * <p>Whoever has something to say only offers it; one thread updates and shows. Of the waiting
 * playhead ticks only the newest is kept; everything else is dealt with in order.
 */
public final class Runner {
  private final LinkedBlockingQueue<Message> waiting = new LinkedBlockingQueue<>();
  private final Viewer viewer;
  private final Consumer<Effect> perform;
  private State state;
  private boolean over;

  /**
   * A loop that has not begun.
   *
   * @param start the state to begin with
   * @param viewer who shows it
   * @param perform who does the effects, on the loop's thread; must not wait
   */
  public Runner(State start, Viewer viewer, Consumer<Effect> perform) {
    this.state = start;
    this.viewer = viewer;
    this.perform = perform;
  }

  /** Leaves a message; from any thread, never waits. */
  public void offer(Message message) {
    waiting.add(message);
  }

  /** Runs until an effect to quit, or until the thread is interrupted. */
  public void run() {
    viewer.show(state);
    try {
      while (!over) {
        List<Message> batch = new ArrayList<>();
        batch.add(waiting.take());
        waiting.drainTo(batch);
        deal(batch);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void deal(List<Message> batch) {
    for (int i = 0; i < batch.size() && !over; i++) {
      if (!isStale(batch, i)) {
        deal(batch.get(i));
      }
    }
    if (!over) {
      viewer.show(state);
    }
  }

  private static boolean isStale(List<Message> batch, int index) {
    return batch.get(index) instanceof Message.Playhead
        && batch.subList(index + 1, batch.size()).stream()
            .anyMatch(later -> later instanceof Message.Playhead || later instanceof Message.Beat);
  }

  private void deal(Message message) {
    Step step = Update.apply(state, message);
    State before = state;
    state = step.state();
    viewer.told(before, message, state);
    for (Effect effect : step.effects()) {
      over |= effect instanceof Effect.Quit;
      if (effect instanceof Effect.Redraw) {
        viewer.again(state);
      }
      perform.accept(effect);
    }
  }
}

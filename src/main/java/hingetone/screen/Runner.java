package hingetone.screen;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;

/**
 * The loop: messages in, effects out, the state shown after each batch.
 *
 * <p>Whoever has something to say only offers it; one thread updates and shows, at most a hundred
 * times a second. What waits is kept small by the {@link Inbox}; it is dealt with in order.
 */
public final class Runner {
  private static final long LEAST_NANOS_A_PICTURE = TimeUnit.MILLISECONDS.toNanos(10);

  private final Inbox inbox = new Inbox();
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
    inbox.add(message);
  }

  /** Runs until an effect to quit, or until the thread is interrupted. */
  public void run() {
    viewer.show(state);
    try {
      while (!over) {
        deal(inbox.take());
        LockSupport.parkNanos(LEAST_NANOS_A_PICTURE);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void deal(List<Message> batch) {
    for (Message message : batch) {
      if (!over) {
        deal(message);
      }
    }
    if (!over) {
      viewer.show(state);
    }
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
      if (effect instanceof Effect.StepAside) {
        viewer.stepAside(state);
      }
    }
  }
}

package hingetone.play;

import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.Executor;

/**
 * Work that takes longer than a picture, done one after the other on another thread. Of each kind
 * only the newest that waits is done, so that a key held down does not pile it up.
 */
final class Chores {
  /** What is done; each has its own place in the queue. */
  enum Kind {
    FACTS,
    GROOVE,
    SOUNDS,
    EXAMPLES,
    POSITION,
    SETTINGS
  }

  private final Map<Kind, Runnable> waiting = new EnumMap<>(Kind.class);
  private final Executor thread;

  Chores(Executor thread) {
    this.thread = thread;
  }

  /** Leaves work in place of what waits of its kind; never waits. */
  void add(Kind kind, Runnable work) {
    synchronized (waiting) {
      if (waiting.put(kind, work) != null) {
        return;
      }
    }
    thread.execute(() -> take(kind).run());
  }

  private Runnable take(Kind kind) {
    synchronized (waiting) {
      return waiting.remove(kind);
    }
  }
}

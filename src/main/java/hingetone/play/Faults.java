package hingetone.play;

import hingetone.output.CommandFailure;
import java.util.concurrent.CompletableFuture;

/**
 * What nobody has caught while playing, on whatever thread: that of the sequencer or of the keys,
 * one of the system's own. The first fault ends the performance, which then fails with it, so that
 * no thread dies unnoticed behind a picture that stands still.
 *
 * <p>Work whose failure the music can do without tells the player by itself and goes on.
 */
final class Faults implements AutoCloseable {
  private final CompletableFuture<Throwable> first = new CompletableFuture<>();
  private final Thread.UncaughtExceptionHandler before =
      Thread.getDefaultUncaughtExceptionHandler();

  /**
   * Watches every thread from now on.
   *
   * @param end ends the performance; called once, on the thread that failed
   */
  Faults(Runnable end) {
    Thread.setDefaultUncaughtExceptionHandler(
        (thread, fault) -> {
          if (first.complete(fault)) {
            end.run();
          }
        });
  }

  /**
   * Looks back on the performance.
   *
   * @throws CommandFailure when a thread has failed
   */
  void check() {
    if (first.isDone()) {
      throw CommandFailure.of(first.join());
    }
  }

  @Override
  public void close() {
    Thread.setDefaultUncaughtExceptionHandler(before);
  }
}

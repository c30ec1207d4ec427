package hingetone.sound.file;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Hands sound on to a taker in a second thread, in order, while the giver makes the next of it: two
 * steps of a render share the work of two cores and give the same samples as one after the other.
 *
 * <pre>{@code
 * try (Relay relay = new Relay(wav::write)) {
 *   mixdown.play((stereo, frames, done) -> relay.give(stereo, frames));
 *   relay.finish();
 * }
 * }</pre>
 *
 * <p>At most {@value #MOST_WAITING} blocks wait, so a slow taker holds up the giver rather than
 * filling the memory. What a taker throws is thrown to the giver, at the latest by {@link #finish}.
 */
final class Relay implements AutoCloseable {
  private static final int BLOCK_FRAMES = 8192;
  private static final int MOST_WAITING = 4;

  private final Taker taker;
  private final ExecutorService second =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "relay");
            thread.setDaemon(true);
            return thread;
          });
  private final Deque<Handed> waiting = new ArrayDeque<>();
  private float[] block = new float[2 * BLOCK_FRAMES];
  private int frames;

  /** What takes the sound; always in the same thread. */
  @FunctionalInterface
  interface Taker {
    /** Takes interleaved stereo, which it must not keep. */
    void take(float[] stereo, int frames) throws IOException;
  }

  private record Handed(Future<?> taken, float[] block) {}

  Relay(Taker taker) {
    this.taker = taker;
  }

  /** Gives interleaved stereo, which is copied. */
  void give(float[] stereo, int count) throws IOException {
    for (int from = 0; from < count; ) {
      int some = Math.min(count - from, BLOCK_FRAMES - frames);
      System.arraycopy(stereo, 2 * from, block, 2 * frames, 2 * some);
      from += some;
      frames += some;
      if (frames == BLOCK_FRAMES) {
        handOn();
      }
    }
  }

  /** Gives the rest and waits until everything is taken. */
  void finish() throws IOException {
    handOn();
    while (!waiting.isEmpty()) {
      oldest();
    }
  }

  private void handOn() throws IOException {
    float[] full = block;
    int count = frames;
    Future<?> taken =
        second.submit(
            () -> {
              taker.take(full, count);
              return null;
            });
    waiting.add(new Handed(taken, full));
    block = waiting.size() < MOST_WAITING ? new float[2 * BLOCK_FRAMES] : oldest();
    frames = 0;
  }

  /** Waits until the oldest block is taken, and gives it back. */
  private float[] oldest() throws IOException {
    Handed handed = waiting.remove();
    try {
      handed.taken().get();
      return handed.block();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while sound was written");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException failure) {
        throw failure;
      }
      throw new IllegalStateException(e.getCause());
    }
  }

  /** Ends the second thread; what it has not taken is dropped. */
  @Override
  public void close() {
    second.shutdownNow();
  }
}

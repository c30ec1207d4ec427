package hingetone.transport;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * A thread that does nothing but wake up twice a millisecond and note when it could not: what the
 * machine does to any thread, whatever that thread runs.
 */
final class StallWatch implements AutoCloseable {
  private static final long NAP = 500_000;
  private static final long STALL = 1_000_000;

  /** A time in which the watch slept longer than it asked to by more than 1 ms. */
  record Stall(long from, long to) {}

  private final List<Stall> stalls = new ArrayList<>();
  private final Thread thread = new Thread(this::watch, "stall watch");
  private volatile boolean closed;

  StallWatch() {
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    thread.start();
  }

  private void watch() {
    long last = System.nanoTime();
    while (!closed) {
      LockSupport.parkNanos(NAP);
      long now = System.nanoTime();
      if (now - last > NAP + STALL) {
        synchronized (stalls) {
          stalls.add(new Stall(last + NAP, now));
        }
      }
      last = now;
    }
  }

  /** Whether the machine stalled somewhere between two moments. */
  boolean stalledBetween(long from, long to) {
    synchronized (stalls) {
      return stalls.stream().anyMatch(s -> s.from() < to && s.to() > from);
    }
  }

  int count() {
    synchronized (stalls) {
      return stalls.size();
    }
  }

  double worstMillis() {
    synchronized (stalls) {
      return stalls.stream().mapToLong(s -> s.to() - s.from()).max().orElse(0) / 1e6;
    }
  }

  @Override
  public void close() {
    closed = true;
  }
}

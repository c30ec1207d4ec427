package hingetone.time;

/**
 * A source of monotonic time. Everything that waits or stamps takes one, so that tests can step it.
 */
@FunctionalInterface
public interface Clock {
  /** The machine's monotonic clock, as {@link System#nanoTime()}. */
  Clock SYSTEM = System::nanoTime;

  /** Nanoseconds since an arbitrary origin; only differences mean anything. */
  long nanos();
}

package hingetone.transport;

import hingetone.time.Clock;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for a moment of the machine's clock. */
@FunctionalInterface
interface Deadline {
  long LONGEST_SLEEP = 1_000_000_000;

  /** From here on naps are short. */
  long NEAR = 250_000_000;

  long NAP = 1_000_000;

  /** An idle machine wakes a sleeper within a fraction of this. */
  long SPIN = 150_000;

  /** Returns at the moment, or earlier when woken. */
  void await(long nanos, BooleanSupplier woken);

  /** Only sleeps: good enough where nothing is heard. */
  static Deadline easy(Clock clock) {
    return (nanos, woken) -> {
      long left = nanos - clock.nanos();
      while (left > 0 && !woken.getAsBoolean()) {
        LockSupport.parkNanos(Math.min(left, LONGEST_SLEEP));
        left = nanos - clock.nanos();
      }
    };
  }

  /**
   * Naps, then spins: as exact as the machine can be. A thread that naps often is woken in time
   * also when every core is busy; one that sleeps long or spins long is not.
   */
  static Deadline exact(Clock clock) {
    return (nanos, woken) -> {
      long left = nanos - clock.nanos();
      while (left > SPIN && !woken.getAsBoolean()) {
        long nap = left > NEAR ? Math.min(left - NEAR, LONGEST_SLEEP) : Math.min(left - SPIN, NAP);
        LockSupport.parkNanos(nap);
        left = nanos - clock.nanos();
      }
      while (clock.nanos() < nanos && !woken.getAsBoolean()) {
        Thread.onSpinWait();
      }
    };
  }
}

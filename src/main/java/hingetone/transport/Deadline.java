package hingetone.transport;

import hingetone.time.Clock;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for a moment of the machine's clock: asleep at first, then awake for the last stretch. */
@FunctionalInterface
interface Deadline {
  /** A sleeping thread wakes up this late at worst on a machine that is not stalled. */
  long SPIN_NANOS = 1_000_000;

  long LONGEST_SLEEP = 1_000_000_000;

  /** Returns at the moment, or earlier when woken. */
  void await(long nanos, BooleanSupplier woken);

  /** Sleeps, then spins: as exact as the machine can be. */
  static Deadline exact(Clock clock) {
    return (nanos, woken) -> {
      long left = nanos - clock.nanos();
      while (left > SPIN_NANOS && !woken.getAsBoolean()) {
        LockSupport.parkNanos(Math.min(left - SPIN_NANOS, LONGEST_SLEEP));
        left = nanos - clock.nanos();
      }
      while (clock.nanos() < nanos && !woken.getAsBoolean()) {
        Thread.onSpinWait();
      }
    };
  }

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
}

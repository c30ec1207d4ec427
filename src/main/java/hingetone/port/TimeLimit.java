package hingetone.port;

/** Waits for what may hang, but not for long. */
public final class TimeLimit {
  private TimeLimit() {}

  /** Runs on a daemon thread and waits so long at most. */
  public static void run(String name, long millis, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
    join(thread, millis);
  }

  /** Waits for a thread so long at most. */
  public static void join(Thread thread, long millis) {
    try {
      thread.join(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

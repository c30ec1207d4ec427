package hingetone.screen.terminal;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.util.Locale;
import org.jline.utils.Signals;

/** Being stopped and woken by a shell, as Ctrl-Z and {@code fg} do it (POSIX.1-2017, 11.1). */
public final class JobControl {
  private static final String STOP = "TSTP";
  private static final String GO_ON = "CONT";

  private JobControl() {}

  /** What to do instead of stopping at once when the shell or anybody else asks for it. */
  public static void whenAskedToStop(Runnable then) {
    Signals.register(STOP, then);
  }

  /** What to do after the program was stopped and goes on. */
  public static void whenWoken(Runnable then) {
    Signals.register(GO_ON, then);
  }

  /**
   * Stops the program and whatever was started in one line with it; returns when it has been woken.
   * Where nobody could wake it the system does not stop it, and on Windows there is no such thing.
   */
  public static void stop() {
    if (System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")) {
      return;
    }
    Object before = Signals.registerDefault(STOP);
    try {
      // Java cannot send a signal; a shell can, to its whole process group, which is ours.
      new ProcessBuilder("sh", "-c", "kill -s TSTP 0")
          .redirectOutput(Redirect.DISCARD)
          .redirectError(Redirect.DISCARD)
          .start()
          .waitFor();
    } catch (IOException e) {
      // Without a shell there is nobody to wake it either.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      Signals.unregister(STOP, before);
    }
  }
}

package hingetone.output;

import java.io.Console;
import java.io.PrintWriter;
import java.util.function.DoubleConsumer;

/** A bar that shows how much of a long job is done, on a terminal only. */
public final class Progress implements DoubleConsumer {
  private static final int WIDTH = 30;

  private final PrintWriter terminal;
  private final boolean shown;
  private int last = -1;

  private Progress(PrintWriter terminal, boolean shown) {
    this.terminal = terminal;
    this.shown = shown;
  }

  /** A bar on a terminal; nothing where the output goes elsewhere. */
  public static Progress on(PrintWriter terminal) {
    return new Progress(terminal, isTerminal());
  }

  /** A bar that is shown wherever it goes. */
  static Progress always(PrintWriter terminal) {
    return new Progress(terminal, true);
  }

  /** From Java 22 on there is always a console, and it says itself whether it is a terminal. */
  private static boolean isTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }

  /** Shows how much is done, 0 to 1; the bar disappears when all is. */
  @Override
  public void accept(double done) {
    int percent = (int) (100 * done);
    if (!shown || percent == last) {
      return;
    }
    last = percent;
    int filled = WIDTH * percent / 100;
    String bar = "[" + "#".repeat(filled) + "-".repeat(WIDTH - filled) + "] " + percent + "%";
    terminal.print("\r" + (percent < 100 ? bar : " ".repeat(bar.length()) + "\r"));
    terminal.flush();
  }
}

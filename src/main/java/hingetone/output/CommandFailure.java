package hingetone.output;

import hingetone.text.Printable;
import hingetone.text.reading.Diagnostic;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.stream.Collectors;

/** Ends a command with a message for people and an exit status. */
public final class CommandFailure extends RuntimeException {
  private static final int MOST_REPORTS = 10;

  private final int status;

  private CommandFailure(int status, String message) {
    super(message);
    this.status = status;
  }

  private CommandFailure(String message, Throwable cause) {
    super(message, cause);
    this.status = ExitStatus.FAILED;
  }

  /**
   * What anything thrown means to people: itself if it was meant for them, a device or a file that
   * failed, else a fault of the program.
   */
  public static CommandFailure of(Throwable thrown) {
    if (thrown instanceof CommandFailure failure) {
      return failure;
    }
    if (thrown instanceof CompletionException && thrown.getCause() != null) {
      return of(thrown.getCause());
    }
    if (thrown instanceof UncheckedIOException) {
      return new CommandFailure(Printable.line(thrown.getMessage()), thrown);
    }
    return new CommandFailure(
        "hingetone met a fault of its own: "
            + Printable.line(thrown.toString())
            + "\nPlease report it with the output of the same command and --debug.",
        thrown);
  }

  /** The input or the usage is wrong, in one line. */
  public static CommandFailure wrongInput(String message) {
    return new CommandFailure(ExitStatus.WRONG_INPUT, Printable.line(message));
  }

  /** The program could not do it, in one line. */
  public static CommandFailure couldNot(String message) {
    return new CommandFailure(ExitStatus.FAILED, Printable.line(message));
  }

  /** Nobody is left to be told. */
  static CommandFailure quiet() {
    return new CommandFailure(ExitStatus.FAILED, "");
  }

  /** A text has problems: the first ten are reported, the rest counted. */
  public static CommandFailure problems(List<Diagnostic> problems) {
    String reports =
        problems.stream()
            .limit(MOST_REPORTS)
            .map(Diagnostic::report)
            .collect(Collectors.joining("\n"));
    int more = problems.size() - MOST_REPORTS;
    String rest = more > 0 ? "\n" + more + " more; hingetone check shows them all.\n" : "";
    return new CommandFailure(ExitStatus.WRONG_INPUT, (reports + rest).stripTrailing());
  }

  public int status() {
    return status;
  }
}

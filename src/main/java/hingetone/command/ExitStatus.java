package hingetone.command;

/** What the program's exit status says. */
final class ExitStatus {
  static final int FINE = 0;

  /** The program could not do it: a fault of its own or a broken device. */
  static final int FAILED = 1;

  /** The input or the usage is wrong. */
  static final int WRONG_INPUT = 2;

  private ExitStatus() {}
}

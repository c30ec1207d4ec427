package hingetone.output;

/** What the program's exit status says. */
public final class ExitStatus {
  public static final int FINE = 0;

  /** The program could not do it: a fault of its own or a broken device. */
  public static final int FAILED = 1;

  /** The input or the usage is wrong. */
  public static final int WRONG_INPUT = 2;

  private ExitStatus() {}
}

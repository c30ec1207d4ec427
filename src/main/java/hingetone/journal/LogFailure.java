package hingetone.journal;

/** The log cannot be read or written; the message is for people. */
public final class LogFailure extends Exception {
  LogFailure(String message) {
    super(message);
  }

  LogFailure(String message, Throwable cause) {
    super(message, cause);
  }
}

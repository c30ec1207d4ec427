package hingetone.port;

/** A MIDI port cannot be used; the message is one line for people: what happened, what to do. */
public final class PortFailure extends Exception {
  private static final long serialVersionUID = 1;

  PortFailure(String message, Throwable cause) {
    super(message, cause);
  }
}

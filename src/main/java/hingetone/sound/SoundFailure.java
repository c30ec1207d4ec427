package hingetone.sound;

/** Sound could not be made; the message is one line for people: what happened and what to do. */
public final class SoundFailure extends Exception {
  private static final long serialVersionUID = 1;

  public SoundFailure(String message) {
    super(message);
  }

  public SoundFailure(String message, Throwable cause) {
    super(message, cause);
  }
}

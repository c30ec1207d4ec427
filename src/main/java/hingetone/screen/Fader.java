package hingetone.screen;

/** A voice whose level has its own keys. */
public enum Fader {
  DRUMS,
  BASS,
  CHORDS,
  LEAD,
  CLICK,
  EVERYTHING;

  /** Its name for people: {@code drums}. */
  public String words() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}

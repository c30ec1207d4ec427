package hingetone.score;

/** What a part does in the band; each has its MIDI channel (0-based) and its track name. */
public enum Role {
  DRUMS("Drums", 9),
  BASS("Bass", 1),
  CHORDS("Chords", 2),
  LEAD("Lead", 3),
  CLICK("Click", 9);

  private final String title;
  private final int channel;

  Role(String title, int channel) {
    this.title = title;
    this.channel = channel;
  }

  /** The name of its track in a MIDI file. */
  public String title() {
    return title;
  }

  /** MIDI channel, 0 to 15; drums and click share the percussion channel, 9. */
  public int channel() {
    return channel;
  }

  /** Whether its keys are instruments of a drum kit rather than pitches. */
  public boolean isPercussion() {
    return this == DRUMS || this == CLICK;
  }
}

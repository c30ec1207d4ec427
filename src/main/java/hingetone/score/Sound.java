package hingetone.score;

/**
 * How a part sounds: its General MIDI program and its place in the mix, as MIDI controllers say it.
 *
 * @param program General MIDI program, 0 to 127 (0 = Acoustic Grand); ignored for drums
 * @param level channel volume, controller 7, 0 to 127
 * @param pan controller 10: 0 left, 64 centre, 127 right
 * @param reverb reverb send, controller 91, 0 to 127
 */
public record Sound(int program, int level, int pan, int reverb) {
  /** A click's, where no drums share its channel. */
  public static final Sound CLICK = new Sound(0, 110, 64, 0);

  public Sound {
    for (int value : new int[] {program, level, pan, reverb}) {
      if (value < 0 || value > 127) {
        throw new IllegalArgumentException("a MIDI value is 0 to 127, not " + value);
      }
    }
  }

  /** A program in the middle of the mix. */
  public static Sound of(int program) {
    return new Sound(program, 100, 64, 20);
  }

  /** The same sound at another level. */
  public Sound withLevel(int newLevel) {
    return new Sound(program, newLevel, pan, reverb);
  }
}

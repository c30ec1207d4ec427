package hingetone.sequencer;

import hingetone.midi.MidiNote;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Sound;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.List;

/**
 * How the click accompanies the band.
 *
 * @param on whether it clicks at all
 * @param accents whether the bar line and the strong beats are louder
 * @param gap where it leaves the player alone
 */
public record Metronome(boolean on, boolean accents, Gap gap) {
  public static final Metronome OFF = new Metronome(false, true, Gap.NONE);
  public static final Metronome ON = new Metronome(true, true, Gap.NONE);

  /** General MIDI percussion: High and Low Wood Block. */
  private static final int HIGH = 76;

  private static final int LOW = 77;
  private static final int LOUDEST = 120;

  /** Where the click is left out. */
  public enum Gap {
    NONE("every beat"),
    /** Only the even beats click: 2 and 4 in 4/4. */
    OFF_BEATS_ONLY("even beats"),
    /** Even bars are silent. */
    EVERY_OTHER_BAR("every other bar");

    private final String clicked;

    Gap(String clicked) {
      this.clicked = clicked;
    }

    /** What is left to click, in words: {@code even beats}. */
    public String clicked() {
      return clicked;
    }

    private Gap next() {
      return values()[(ordinal() + 1) % values().length];
    }
  }

  /** A part that plays all its sounds. */
  static Part part() {
    Note high = new Note(Beats.ZERO, Beats.ONE, HIGH, LOUDEST);
    return new Part(Role.CLICK, Sound.CLICK, List.of(high, high.withKey(LOW)));
  }

  /** Off where this is on, and the other way round. */
  public Metronome switched() {
    return new Metronome(!on, accents, gap);
  }

  /** On, leaving the player alone in the next place. */
  public Metronome withNextGap() {
    return new Metronome(true, accents, gap.next());
  }

  /** Whether a beat of a bar clicks. */
  boolean clicks(int bar, int beat) {
    return on
        && switch (gap) {
          case NONE -> true;
          case OFF_BEATS_ONLY -> beat % 2 == 0;
          case EVERY_OTHER_BAR -> Math.floorMod(bar, 2) == 1;
        };
  }

  /** The click of a beat: the bar line loudest, then the strong beats. */
  static MidiNote click(Meter meter, int beat, boolean accents, Beats at, Beats length) {
    int velocity = beat == 1 ? LOUDEST : meter.isStrong(Beats.of(beat)) ? 100 : 80;
    int key = accents && beat == 1 ? HIGH : LOW;
    return new MidiNote(Role.CLICK, key, accents ? velocity : 100, at, at.plus(length), 0, 0);
  }
}

package hingetone.screen;

import hingetone.screen.picture.Size;
import hingetone.sequencer.Status;
import hingetone.time.Beats;
import java.util.Optional;
import java.util.Set;

/** Something that happened. */
public sealed interface Message {
  /**
   * A key: a character as itself, others by name: {@code space}, {@code enter}, {@code esc}, {@code
   * tab}, {@code up}, {@code down}, {@code left}, {@code right}, {@code home}, {@code end}, {@code
   * page up}, {@code page down}, {@code ctrl c}, {@code ctrl z}.
   *
   * @param key its name
   * @param nanos when it was struck
   */
  record Stroke(String key, long nanos) implements Message {}

  /**
   * A pedal went down: {@code cc 64} or {@code program 3}.
   *
   * @param pedal its name
   * @param nanos when it went down
   */
  record Pedal(String pedal, long nanos) implements Message {}

  /** The terminal's size changed. */
  record Resized(Size size) implements Message {}

  /** A beat is heard; never dropped. In quarter notes from bar 1, laps counted on. */
  record Beat(Beats now) implements Message {}

  /** The playhead moved; only the newest counts. In quarter notes from bar 1, laps counted on. */
  record Playhead(Beats now) implements Message {}

  /** What the band does or is set to changed. */
  record Changed(Status status) implements Message {}

  /** The chart's facts changed, as after a key shift. */
  record Learned(ChartFacts facts) implements Message {}

  /** A device was lost, with what to do about it; empty when it is back. */
  record Fault(Optional<String> words) implements Message {}

  /** It is over: the last lap is played, or there will be no more keys. */
  record Over() implements Message {}

  /** The notes that the player sounds now, as MIDI numbers; empty when none does. */
  record Sounding(Set<Integer> notes) implements Message {
    public Sounding {
      notes = Set.copyOf(notes);
    }
  }

  /** A take is recorded from now on, under a name; empty when none is any more. */
  record Recording(Optional<String> take) implements Message {}

  /**
   * How a landing or a line just gone over was, in a few words.
   *
   * @param onPlace whether a landing was on its place; empty after a line
   */
  record Verdict(String words, Optional<Boolean> onPlace) implements Message {}

  /** Something that the player is to answer with a key from 1 to 5. */
  record Question(String words) implements Message {}

  /** Something to tell the player in passing. */
  record Notice(String words) implements Message {}
}

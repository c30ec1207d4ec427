package hingetone.sound;

import hingetone.midi.MidiEvents;
import java.util.Map;
import javax.sound.midi.ShortMessage;

/** What the JDK's emergency bank plays instead of the drums it lacks. */
final class BuiltInSounds {
  private static final int PERCUSSION = 9;
  private static final int SIDE_STICK = 37;
  private static final int CLOSED_HAT = 42;

  /** Keys that have no sound, or the wrong one, and what is played in their place. */
  private static final Map<Integer, Integer> SUBSTITUTES =
      Map.ofEntries(
          // Rides have the crash's sound, and a bell the side stick's.
          Map.entry(51, CLOSED_HAT),
          Map.entry(53, CLOSED_HAT),
          Map.entry(59, CLOSED_HAT),
          // Shaken instruments have the side stick's.
          Map.entry(54, CLOSED_HAT),
          Map.entry(69, CLOSED_HAT),
          Map.entry(70, CLOSED_HAT),
          Map.entry(82, CLOSED_HAT));

  private BuiltInSounds() {}

  /** The message with a drum that exists; one that is no drum's note stays as it is. */
  static ShortMessage adapt(ShortMessage message) {
    boolean drum =
        message.getChannel() == PERCUSSION
            && (MidiEvents.isNoteOn(message) || MidiEvents.isNoteOff(message));
    return drum
        ? MidiEvents.message(
            message.getCommand(), PERCUSSION, drum(message.getData1()), message.getData2())
        : message;
  }

  /** The key to strike for a drum of General MIDI: one that sounds, the nearest in kind. */
  static int drum(int key) {
    boolean silent = key < 35 || key > 82;
    return SUBSTITUTES.getOrDefault(key, silent ? SIDE_STICK : key);
  }
}

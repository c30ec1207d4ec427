package hingetone.sequencer;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.sound.midi.MidiMessage;

/** What a receiver that obeys every message would still be sounding. */
public final class Wire {
  private Wire() {}

  /** The keys left on, as {@code channel:key}; fails on a note struck twice or ended twice. */
  public static Set<String> left(List<? extends MidiMessage> messages) {
    Set<String> on = new TreeSet<>();
    for (MidiMessage message : messages) {
      byte[] bytes = message.getMessage();
      int command = message.getStatus() & 0xF0;
      if (command == 0x90 && bytes[2] > 0 && !on.add(key(message))) {
        throw new AssertionError("struck while sounding: " + key(message));
      }
      if (command == 0x80 && !on.remove(key(message))) {
        throw new AssertionError("ended while silent: " + key(message));
      }
    }
    return on;
  }

  private static String key(MidiMessage message) {
    return (message.getStatus() & 0x0F) + ":" + message.getMessage()[1];
  }
}

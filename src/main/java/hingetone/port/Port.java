package hingetone.port;

import javax.sound.midi.MidiDevice;

/**
 * A MIDI port of this machine.
 *
 * @param number its number among the ports of its direction, from 1, as people type it
 * @param name its name
 * @param description what the system says about it
 */
public record Port(int number, String name, String description, Direction direction) {
  /** Seen from this program. */
  public enum Direction {
    /** Notes come in from it. */
    INPUT("input"),
    /** Notes go out to it. */
    OUTPUT("output");

    private final String word;

    Direction(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }

    boolean fits(MidiDevice device) {
      return (this == INPUT ? device.getMaxTransmitters() : device.getMaxReceivers()) != 0;
    }
  }
}

package hingetone.midi;

import javax.sound.midi.ShortMessage;

/**
 * A channel message that came in from an instrument.
 *
 * @param nanos when it came, on the machine's clock
 * @param command its kind, as the upper half of the status byte says: {@code 0x90} for a note on
 * @param channel MIDI channel, 0 to 15
 * @param first its first data byte: the key of a note, the number of a controller
 * @param second its second data byte: the velocity of a note, the value of a controller
 */
public record Received(long nanos, int command, int channel, int first, int second) {
  public static Received of(long nanos, ShortMessage message) {
    return new Received(
        nanos, message.getCommand(), message.getChannel(), message.getData1(), message.getData2());
  }

  /** Whether a note is struck. */
  public boolean isNoteOn() {
    return command == ShortMessage.NOTE_ON && second > 0;
  }

  /** Whether a note ends: a note-off, or a note-on with velocity 0. */
  public boolean isNoteOff() {
    return command == ShortMessage.NOTE_OFF || (command == ShortMessage.NOTE_ON && second == 0);
  }

  /** Where the pitch wheel stands, −8192 to 8191; meaningful for pitch bends only. */
  public int bend() {
    return second * 128 + first - 8192;
  }
}

package hingetone.midi;

import hingetone.text.Stamp;
import java.nio.charset.StandardCharsets;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;

/** The stamp in a MIDI file: an event that other programs pass over, last of all. */
final class MidiStamp {
  private static final int SEQUENCER_SPECIFIC = 0x7F;

  /** The maker's number for non-commercial use (MIDI 1.0, system exclusive; from memory). */
  private static final char NO_MAKER = 0x7D;

  private MidiStamp() {}

  /** Puts it at the end of the last track. */
  static void put(Stamp stamp, Sequence sequence) {
    Track[] tracks = sequence.getTracks();
    Track last = tracks[tracks.length - 1];
    byte[] words = (NO_MAKER + stamp.open()).getBytes(StandardCharsets.US_ASCII);
    try {
      MetaMessage message = new MetaMessage(SEQUENCER_SPECIFIC, words, words.length);
      last.add(new MidiEvent(message, last.ticks()));
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }
}

package hingetone.midi;

import hingetone.score.Part;
import hingetone.score.Score;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;

/**
 * MIDI messages, and those of a score's notes, as files and the synthesizer take them: every
 * note-on has its note-off.
 */
public final class MidiEvents {
  /**
   * Order of messages at one instant: note off, control change, program change, note on, anything
   * else last.
   */
  public static final Comparator<ShortMessage> ORDER = Comparator.comparingInt(MidiEvents::rank);

  /** By place and, at one place, by offset, then in {@link #ORDER}. */
  private static final Comparator<TimedMessage> BY_PLACE =
      Comparator.comparing(TimedMessage::at)
          .thenComparingLong(TimedMessage::offsetMicros)
          .thenComparing(TimedMessage::message, ORDER);

  private MidiEvents() {}

  /** The notes of all parts, sorted by place; at one place in {@link #ORDER}. */
  public static List<TimedMessage> of(Score score) {
    return of(score.parts());
  }

  /** The notes of some parts, sorted like those of a score. */
  public static List<TimedMessage> of(List<Part> parts) {
    List<TimedMessage> messages = new ArrayList<>();
    for (MidiNote note : MidiNote.byKey(parts)) {
      messages.add(on(note));
      messages.add(off(note));
    }
    messages.sort(BY_PLACE);
    return messages;
  }

  /** A channel message; the values are checked. */
  public static ShortMessage message(int command, int channel, int first, int second) {
    try {
      return new ShortMessage(command, channel, first, second);
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  /** Whether a message strikes a note: a note-on with a velocity above 0. */
  public static boolean isNoteOn(ShortMessage message) {
    return message.getCommand() == ShortMessage.NOTE_ON && message.getData2() > 0;
  }

  /** Whether a message ends a note: a note-off, or a note-on with velocity 0. */
  public static boolean isNoteOff(ShortMessage message) {
    return message.getCommand() == ShortMessage.NOTE_OFF
        || (message.getCommand() == ShortMessage.NOTE_ON && message.getData2() == 0);
  }

  private static int rank(ShortMessage message) {
    if (isNoteOff(message)) {
      return 0;
    }
    return switch (message.getCommand()) {
      case ShortMessage.CONTROL_CHANGE -> 1;
      case ShortMessage.PROGRAM_CHANGE -> 2;
      case ShortMessage.NOTE_ON -> 3;
      default -> 4;
    };
  }

  private static TimedMessage on(MidiNote note) {
    int channel = note.role().channel();
    return new TimedMessage(
        note.on(),
        note.onMicros(),
        note.role(),
        message(ShortMessage.NOTE_ON, channel, note.key(), note.velocity()));
  }

  private static TimedMessage off(MidiNote note) {
    int channel = note.role().channel();
    return new TimedMessage(
        note.off(),
        note.offMicros(),
        note.role(),
        message(ShortMessage.NOTE_OFF, channel, note.key(), 0));
  }
}

package hingetone.midi;

import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;

/**
 * Turns parts into MIDI messages: the one place that does, for files, for the synthesizer and for
 * MIDI ports.
 *
 * <p>Every note-on has its note-off, and on one channel no key is struck while it sounds: of two
 * notes of a key that overlap the first ends where the second starts, and of two at one place the
 * louder stays. This holds at every tempo, whatever the notes' offsets.
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

  /** No tempo is faster: 400 dotted quarters a minute are 100 ms a quarter. */
  private static final long SHORTEST_QUARTER_MICROS = 100_000;

  private MidiEvents() {}

  /** The notes of all parts, sorted by place; at one place in {@link #ORDER}. */
  public static List<TimedMessage> of(Score score) {
    return of(score.parts());
  }

  /** The notes of some parts, sorted like those of a score. */
  public static List<TimedMessage> of(List<Part> parts) {
    Map<Integer, List<Strike>> byKey = new TreeMap<>();
    for (Part part : parts) {
      for (Note note : part.notes()) {
        int place = part.role().channel() * 128 + note.key();
        byKey.computeIfAbsent(place, k -> new ArrayList<>()).add(new Strike(part.role(), note));
      }
    }
    List<TimedMessage> messages = new ArrayList<>();
    byKey.values().forEach(strikes -> addKey(strikes, messages));
    messages.sort(BY_PLACE);
    return messages;
  }

  /** A note and the part that plays it. */
  private record Strike(Role role, Note note) {}

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

  /** Adds the notes of one key of one channel, walking back from the last. */
  private static void addKey(List<Strike> strikes, List<TimedMessage> into) {
    List<Strike> single = withoutDoubles(strikes);
    Optional<Note> next = Optional.empty();
    for (int i = single.size() - 1; i >= 0; i--) {
      Note whole = single.get(i).note();
      Note note = next.map(n -> endedBefore(n, whole)).orElse(whole);
      long own = note.offsetMicros();
      long offOffset = next.map(n -> Math.min(own, n.offsetMicros())).orElse(own);
      add(single.get(i).role(), note, offOffset, into);
      next = Optional.of(note);
    }
  }

  private static List<Strike> withoutDoubles(List<Strike> strikes) {
    Map<Beats, Strike> byOnset = new TreeMap<>();
    for (Strike strike : strikes) {
      byOnset.merge(
          strike.note().onset(),
          strike,
          (a, b) -> b.note().velocity() > a.note().velocity() ? b : a);
    }
    return List.copyOf(byOnset.values());
  }

  /**
   * A note cut where the next of its key starts. Its offset is limited too, by half the least time
   * its length can take, so that its own end, which is not later than the next start, still comes
   * after its start.
   */
  private static Note endedBefore(Note next, Note note) {
    Beats length = note.end().min(next.onset()).minus(note.onset());
    long room = length.toUnits(SHORTEST_QUARTER_MICROS) / 2;
    return note.withLength(length)
        .withOffsetMicros(Math.min(note.offsetMicros(), next.offsetMicros() + room));
  }

  private static void add(Role role, Note note, long offOffset, List<TimedMessage> into) {
    int channel = role.channel();
    into.add(
        new TimedMessage(
            note.onset(),
            note.offsetMicros(),
            role,
            message(ShortMessage.NOTE_ON, channel, note.key(), note.velocity())));
    into.add(
        new TimedMessage(
            note.end(), offOffset, role, message(ShortMessage.NOTE_OFF, channel, note.key(), 0)));
  }
}

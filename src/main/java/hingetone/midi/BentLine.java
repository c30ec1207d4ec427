package hingetone.midi;

import hingetone.text.Stamp;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * A line of notes with their bends as a Standard MIDI File of format 1: a track with title and
 * tempo, then one with the notes. Places are times, so that the file plays as it was played.
 *
 * <p>Each channel states its bend range, ±{@value #BEND_RANGE} semitones, by registered parameter 0
 * (MIDI 1.0 detailed specification, pitch bend sensitivity).
 */
public final class BentLine {
  /** What the file bears at its end. */
  public static final Stamp STAMP = new Stamp("heard-mid");

  /** Semitones that the pitch wheel reaches to either side. */
  public static final int BEND_RANGE = 12;

  private static final int CENTRE = 8192;
  private static final int TRACK_NAME = 0x03;
  private static final int TEMPO = 0x51;
  private static final int CLEAN_GUITAR = 27;

  /** Registered parameter 0, its two halves, then its value, and no parameter after it. */
  private static final int[][] STATE_BEND_RANGE = {
    {101, 0}, {100, 0}, {6, BEND_RANGE}, {38, 0}, {101, 127}, {100, 127}
  };

  private final double ticksEachSecond;

  /**
   * A note.
   *
   * @param at seconds from the start of the file
   * @param end seconds
   * @param channel MIDI channel, 0 to 15
   * @param key MIDI number, 0 to 127
   * @param velocity 1 to 127
   * @param bends how far it is bent from when on
   */
  public record Note(double at, double end, int channel, int key, int velocity, List<Bend> bends) {
    public Note {
      bends = List.copyOf(bends);
    }
  }

  /** A number of semitones from the key, from a time on in seconds. */
  public record Bend(double at, double semitones) {}

  /** A message at a tick. */
  private record Timed(long tick, ShortMessage message) {}

  private BentLine(double quartersEachMinute) {
    this.ticksEachSecond = MidiFile.TICKS * quartersEachMinute / 60;
  }

  /**
   * Writes notes to a stream, which stays open.
   *
   * @param quartersEachMinute the tempo that the file states; the notes' times do not depend on it
   */
  public static void write(
      String title, double quartersEachMinute, List<Note> notes, OutputStream output)
      throws IOException {
    MidiSystem.write(new BentLine(quartersEachMinute).sequence(title, notes), 1, output);
  }

  private Sequence sequence(String title, List<Note> notes) {
    try {
      Sequence sequence = new Sequence(Sequence.PPQ, MidiFile.TICKS);
      Track head = sequence.createTrack();
      add(head, 0, meta(TRACK_NAME, title.getBytes(StandardCharsets.UTF_8)));
      int micros = (int) Math.round(1e6 * MidiFile.TICKS / ticksEachSecond);
      add(head, 0, meta(TEMPO, (byte) (micros >> 16), (byte) (micros >> 8), (byte) micros));
      Track line = sequence.createTrack();
      add(line, 0, meta(TRACK_NAME, "Lead".getBytes(StandardCharsets.UTF_8)));
      notes.stream().map(Note::channel).distinct().sorted().forEach(c -> setUp(line, c));
      messages(notes).forEach(timed -> add(line, timed.tick, timed.message));
      MidiStamp.put(STAMP, sequence);
      return sequence;
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void setUp(Track line, int channel) {
    for (int[] control : STATE_BEND_RANGE) {
      add(
          line,
          0,
          MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, control[0], control[1]));
    }
    add(line, 0, MidiEvents.message(ShortMessage.PROGRAM_CHANGE, channel, CLEAN_GUITAR, 0));
  }

  private List<Timed> messages(List<Note> notes) {
    List<Timed> timed = new ArrayList<>();
    for (Note note : notes) {
      long start = tick(note.at);
      long end = Math.max(start + 1, tick(note.end));
      timed.add(new Timed(start, wheel(note.channel, 0)));
      for (Bend bend : note.bends) {
        long tick = Math.max(start, Math.min(end - 1, tick(bend.at)));
        timed.add(new Timed(tick, wheel(note.channel, bend.semitones)));
      }
      timed.add(on(start, note));
      timed.add(
          new Timed(end, MidiEvents.message(ShortMessage.NOTE_OFF, note.channel, note.key, 0)));
    }
    timed.sort(Comparator.comparingLong(Timed::tick).thenComparingInt(t -> rank(t.message)));
    return timed;
  }

  private static Timed on(long tick, Note note) {
    return new Timed(
        tick, MidiEvents.message(ShortMessage.NOTE_ON, note.channel, note.key, note.velocity));
  }

  private static int rank(ShortMessage message) {
    return switch (message.getCommand()) {
      case ShortMessage.NOTE_OFF -> 0;
      case ShortMessage.PITCH_BEND -> 1;
      default -> 2;
    };
  }

  private static ShortMessage wheel(int channel, double semitones) {
    long way = Math.round(semitones / BEND_RANGE * CENTRE);
    int value = (int) Math.max(0, Math.min(2 * CENTRE - 1, CENTRE + way));
    return MidiEvents.message(ShortMessage.PITCH_BEND, channel, value & 0x7F, value >> 7);
  }

  private long tick(double seconds) {
    return Math.max(0, Math.round(seconds * ticksEachSecond));
  }

  private static void add(Track track, long tick, MidiMessage message) {
    track.add(new MidiEvent(message, tick));
  }

  private static MetaMessage meta(int type, byte... data) throws InvalidMidiDataException {
    return new MetaMessage(type, data, data.length);
  }
}

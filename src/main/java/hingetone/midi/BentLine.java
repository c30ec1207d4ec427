package hingetone.midi;

import hingetone.score.Score;
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
 * A line of notes with their bends as a Standard MIDI File of format 1: a track with title, tempos,
 * meters, keys and chords, then one with the notes.
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
  private static final int CLEAN_GUITAR = 27;

  /** Registered parameter 0, its two halves, then its value, and no parameter after it. */
  private static final int[][] STATE_BEND_RANGE = {
    {101, 0}, {100, 0}, {6, BEND_RANGE}, {38, 0}, {101, 127}, {100, 127}
  };

  private final Score head;

  /**
   * A note. Places are not rounded before they become ticks.
   *
   * @param at in quarter notes from bar 1
   * @param end in quarter notes from bar 1
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

  /** A number of semitones from the key, from a place on in quarter notes from bar 1. */
  public record Bend(double at, double semitones) {}

  /** A message at a tick. */
  private record Timed(long tick, ShortMessage message) {}

  private BentLine(Score head) {
    this.head = head;
  }

  /**
   * Writes notes to a stream, which stays open.
   *
   * @param head title, tempos, meters, keys and chords; the file begins with its count-in
   */
  public static void write(Score head, List<Note> notes, OutputStream output) throws IOException {
    MidiSystem.write(new BentLine(head).sequence(notes), 1, output);
  }

  private Sequence sequence(List<Note> notes) {
    try {
      Sequence sequence = MidiFile.unstamped(head);
      Track line = sequence.createTrack();
      byte[] name = "Lead".getBytes(StandardCharsets.US_ASCII);
      add(line, 0, new MetaMessage(TRACK_NAME, name, name.length));
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

  private long tick(double quarters) {
    double fromStart = quarters + head.countIn().toDouble();
    return Math.max(0, Math.round(fromStart * MidiFile.TICKS));
  }

  private static void add(Track track, long tick, MidiMessage message) {
    track.add(new MidiEvent(message, tick));
  }
}

package hingetone.midi;

import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * A MIDI file as lines to read and compare, track by track: {@code bar 1 beat 3+1/2 bass E2 v90}.
 *
 * <p>Bars count from 1 at the end of the count-in, in the meters that the file itself states. Drum
 * notes show their key as a number; other notes are spelled in C.
 */
public final class MidiListing {
  private static final Key SPELLING = Key.parse("C major").orElseThrow();

  private final Sequence sequence;
  private final int countInBars;
  private final TreeMap<Long, Meter> meters = new TreeMap<>();

  private MidiListing(Sequence sequence, int countInBars) {
    this.sequence = sequence;
    this.countInBars = countInBars;
    meters.put(0L, Meter.COMMON);
    Track title = sequence.getTracks()[0];
    for (int i = 0; i < title.size(); i++) {
      if (title.get(i).getMessage() instanceof MetaMessage meta && meta.getType() == 0x58) {
        byte[] data = meta.getData();
        meters.put(title.get(i).getTick(), Meter.of(data[0], 1 << data[1]));
      }
    }
  }

  /** The lines of a file whose first {@code countInBars} bars count in. */
  public static List<String> of(byte[] file, int countInBars)
      throws IOException, InvalidMidiDataException {
    Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(file));
    return new MidiListing(sequence, countInBars).lines();
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      String name = "title";
      for (int i = 0; i < track.size(); i++) {
        MidiEvent event = track.get(i);
        if (event.getMessage() instanceof MetaMessage meta && meta.getType() == 0x03 && i == 0) {
          name = track == sequence.getTracks()[0] ? "title" : text(meta).toLowerCase(Locale.ROOT);
        }
        lines.add(place(event.getTick()) + " " + name + " " + describe(event));
      }
    }
    return lines;
  }

  private String place(long tick) {
    int bar = 1 - countInBars;
    long start = 0;
    while (true) {
      Meter meter = meters.floorEntry(start).getValue();
      long length = meter.barLength().toUnits(sequence.getResolution());
      if (tick < start + length) {
        Beats quarters = Beats.of(tick - start, sequence.getResolution());
        return "bar " + bar + " beat " + meter.toBeats(quarters).plus(Beats.ONE);
      }
      start += length;
      bar++;
    }
  }

  private static String text(MetaMessage meta) {
    return new String(meta.getData(), java.nio.charset.StandardCharsets.UTF_8);
  }

  private static String describe(MidiEvent event) {
    if (event.getMessage() instanceof MetaMessage meta) {
      return describe(meta);
    }
    ShortMessage message = (ShortMessage) event.getMessage();
    String note =
        message.getChannel() == 9
            ? "key " + message.getData1()
            : SPELLING.spell(message.getData1()).toString();
    if (MidiEvents.isNoteOn(message)) {
      return note + " v" + message.getData2();
    }
    if (MidiEvents.isNoteOff(message)) {
      return note + " off";
    }
    return message.getCommand() == ShortMessage.PROGRAM_CHANGE
        ? "program " + message.getData1()
        : "control " + message.getData1() + " " + message.getData2();
  }

  private static String describe(MetaMessage meta) {
    byte[] data = meta.getData();
    return switch (meta.getType()) {
      case 0x01 -> "text " + text(meta);
      case 0x03 -> "name " + text(meta);
      case 0x06 -> "marker " + text(meta);
      case 0x2F -> "end";
      case 0x51 -> "tempo " + ((data[0] & 255) << 16 | (data[1] & 255) << 8 | data[2] & 255);
      case 0x58 -> "meter " + data[0] + "/" + (1 << data[1]) + " clocks " + data[2];
      case 0x59 -> "signature " + data[0] + (data[1] == 1 ? " minor" : " major");
      case 0x7F -> "mark " + text(meta).substring(1);
      default -> "meta " + meta.getType();
    };
  }
}

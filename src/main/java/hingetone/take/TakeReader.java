package hingetone.take;

import hingetone.midi.MidiEvents;
import hingetone.midi.Received;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Reads what was played from a MIDI file: one of our takes, or one that any other program wrote.
 * The notes are those of the track named Lead, else of the one with the most notes that is no drum
 * track.
 *
 * @param cues where the bars do not simply follow, in order
 * @param tempos the tempos, in order, the first from the start
 * @param notes the notes, in quarter notes from the start of the file, in order of their strokes
 * @param length the file's length in quarter notes
 */
public record TakeReader(
    List<Cue> cues, List<TempoFrom> tempos, List<PlacedNote> notes, double length) {
  private static final int CUE_POINT = 0x07;
  private static final int TEMPO = 0x51;
  private static final int TRACK_NAME = 0x03;
  private static final int DRUMS = 9;
  private static final int MOST_QUARTERS = 100_000;
  private static final double USUAL_MICROS = 500_000;

  /** A bar of the form begins, in quarter notes from the start of the file. */
  public record Cue(double at, PlayedBars.Bar bar) {}

  /** From a place on, in quarter notes, a quarter lasts so many microseconds. */
  public record TempoFrom(double at, double microsPerQuarter) {}

  public TakeReader {
    cues = List.copyOf(cues);
    tempos = List.copyOf(tempos);
    notes = List.copyOf(notes);
  }

  /** How long the file lasts, in seconds. */
  public double seconds() {
    double micros = 0;
    for (int i = 0; i < tempos.size(); i++) {
      double to = i + 1 < tempos.size() ? Math.min(length, tempos.get(i + 1).at()) : length;
      micros += Math.max(0, to - tempos.get(i).at()) * tempos.get(i).microsPerQuarter();
    }
    return micros / 1e6;
  }

  /**
   * Reads a file.
   *
   * @throws IOException with a sentence for people when it is no MIDI file of this kind
   */
  public static TakeReader read(File file) throws IOException {
    Sequence sequence;
    try {
      sequence = MidiSystem.getSequence(file);
    } catch (InvalidMidiDataException | IOException | RuntimeException e) {
      // The JDK's reader throws whatever a broken file makes it meet.
      throw new IOException(file + " is no MIDI file that can be read: " + e.getMessage(), e);
    }
    if (sequence.getDivisionType() != Sequence.PPQ || sequence.getResolution() < 1) {
      throw new IOException(file + " counts in frames of film, not in quarter notes.");
    }
    double quarter = sequence.getResolution();
    if (sequence.getTickLength() / quarter > MOST_QUARTERS) {
      throw new IOException(file + " is longer than any take: " + MOST_QUARTERS + " quarters.");
    }
    List<Cue> cues = new ArrayList<>();
    List<TempoFrom> tempos = new ArrayList<>(List.of(new TempoFrom(0, USUAL_MICROS)));
    for (Track track : sequence.getTracks()) {
      for (int i = 0; i < track.size(); i++) {
        if (track.get(i).getMessage() instanceof MetaMessage meta) {
          double at = track.get(i).getTick() / quarter;
          if (meta.getType() == CUE_POINT) {
            PlayedBars.Bar.ofCue(text(meta)).ifPresent(bar -> cues.add(new Cue(at, bar)));
          } else if (meta.getType() == TEMPO && meta.getData().length == 3) {
            byte[] b = meta.getData();
            int micros = (b[0] & 255) << 16 | (b[1] & 255) << 8 | b[2] & 255;
            tempos.add(new TempoFrom(at, Math.max(1, micros)));
          }
        }
      }
    }
    tempos.sort(Comparator.comparingDouble(TempoFrom::at));
    cues.sort(Comparator.comparingDouble(Cue::at));
    List<PlacedNote> notes = lead(sequence).map(t -> notes(t, quarter)).orElse(List.of());
    return new TakeReader(cues, tempos, notes, sequence.getTickLength() / quarter);
  }

  private static Optional<Track> lead(Sequence sequence) {
    List<Track> played = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      if (strokes(track) > 0) {
        played.add(track);
      }
    }
    return played.stream()
        .filter(track -> name(track).equalsIgnoreCase("lead"))
        .findFirst()
        .or(() -> played.stream().max(Comparator.comparingInt(TakeReader::strokes)));
  }

  private static int strokes(Track track) {
    int strokes = 0;
    for (int i = 0; i < track.size(); i++) {
      boolean strikes =
          track.get(i).getMessage() instanceof ShortMessage m
              && MidiEvents.isNoteOn(m)
              && m.getChannel() != DRUMS;
      strokes += strikes ? 1 : 0;
    }
    return strokes;
  }

  private static String name(Track track) {
    for (int i = 0; i < track.size(); i++) {
      if (track.get(i).getMessage() instanceof MetaMessage meta && meta.getType() == TRACK_NAME) {
        return text(meta).strip();
      }
    }
    return "";
  }

  private static String text(MetaMessage meta) {
    return new String(meta.getData(), StandardCharsets.UTF_8);
  }

  /** The notes as an instrument's, ticks in the place of nanoseconds. */
  private static List<PlacedNote> notes(Track track, double quarter) {
    PlayedNotes playing = new PlayedNotes();
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (track.get(i).getMessage() instanceof ShortMessage m && m.getChannel() != DRUMS) {
        notes.addAll(playing.take(Received.of(track.get(i).getTick(), m)));
      }
    }
    notes.addAll(playing.lost(track.ticks()));
    notes.sort(Comparator.comparingLong(PlayedNote::on).thenComparingInt(PlayedNote::key));
    OptionalInt first = GuitarChannels.first(notes);
    return notes.stream().map(n -> placed(n, quarter, first)).toList();
  }

  private static PlacedNote placed(PlayedNote note, double quarter, OptionalInt first) {
    PlacedNote placed = note.placed(note.on() / quarter, note.off() / quarter);
    return first.isEmpty() ? placed : placed.onString(note.channel() - first.getAsInt() + 1);
  }
}

package hingetone.take;

import hingetone.midi.MidiTracks;
import hingetone.midi.Received;
import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads what was played from a MIDI file: one of our takes, or one that any other program wrote.
 * The notes are those of the line that is asked for, else of the track named Lead, else of the one
 * most like a melody ({@link MelodyLikeness}).
 *
 * @param cues where the bars do not simply follow, in order
 * @param tempos the tempos, in order, the first from the start
 * @param notes the notes, in quarter notes from the start of the file, in order of their strokes
 * @param length the file's length in quarter notes
 * @param told what people are told of the line that was taken, where the program chose it
 * @param bar how long its first bar is in quarter notes, where the file is written in bars
 */
public record TakeReader(
    List<Cue> cues,
    List<TempoFrom> tempos,
    List<PlacedNote> notes,
    double length,
    Optional<String> told,
    Optional<Double> bar) {
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
    return secondsAt(length);
  }

  /** How many seconds after the start of the file a place lies, in quarter notes. */
  public double secondsAt(double place) {
    double micros = 0;
    for (int i = 0; i < tempos.size(); i++) {
      double to = i + 1 < tempos.size() ? Math.min(place, tempos.get(i + 1).at()) : place;
      micros += Math.max(0, to - tempos.get(i).at()) * tempos.get(i).microsPerQuarter();
    }
    return micros / 1e6;
  }

  /** Reads a MIDI file, the line named Lead, else the one most like a melody. */
  public static TakeReader read(File file) throws IOException {
    return read(file, LineWanted.ANY);
  }

  /**
   * Reads a MIDI file.
   *
   * @throws IOException with a sentence for people when it is no MIDI file of this kind
   */
  public static TakeReader read(File file, LineWanted wanted) throws IOException {
    MidiTracks midi = MidiTracks.read(file.toPath());
    double quarter = midi.quarter();
    if (midi.ticks() / quarter > MOST_QUARTERS) {
      throw new IOException(file + " is longer than any take: " + MOST_QUARTERS + " quarters.");
    }
    List<Cue> cues = new ArrayList<>();
    List<TempoFrom> tempos = new ArrayList<>(List.of(new TempoFrom(0, USUAL_MICROS)));
    for (MidiTracks.Track track : midi.tracks()) {
      for (MidiTracks.Meta meta : track.texts()) {
        double at = meta.tick() / quarter;
        byte[] b = meta.data();
        if (meta.type() == CUE_POINT) {
          PlayedBars.Bar.ofCue(meta.text()).ifPresent(bar -> cues.add(new Cue(at, bar)));
        } else if (meta.type() == TEMPO && b.length == 3) {
          int micros = (b[0] & 255) << 16 | (b[1] & 255) << 8 | b[2] & 255;
          tempos.add(new TempoFrom(at, Math.max(1, micros)));
        }
      }
    }
    tempos.sort(Comparator.comparingDouble(TempoFrom::at));
    cues.sort(Comparator.comparingDouble(Cue::at));
    TakeLine.Chosen line = TakeLine.of(file.toString(), lines(midi, wanted), wanted);
    return new TakeReader(
        cues, tempos, line.notes(), midi.ticks() / quarter, line.told(), Optional.empty());
  }

  /** The lines of notes; a track of several channels that is no guitar's is one line a channel. */
  private static List<TakeLine> lines(MidiTracks midi, LineWanted wanted) {
    List<TakeLine> lines = new ArrayList<>();
    for (int i = 0; i < midi.tracks().size(); i++) {
      MidiTracks.Track track = midi.tracks().get(i);
      String name = name(track);
      List<PlayedNote> notes = notes(track, wanted.channel().map(c -> c - 1).orElse(-1));
      List<Integer> channels = notes.stream().map(PlayedNote::channel).distinct().sorted().toList();
      boolean guitar = GuitarChannels.first(notes).isPresent() && wanted.channel().isEmpty();
      if (channels.size() < 2 && wanted.channel().isEmpty() || guitar) {
        add(lines, new TakeLine(i + 1, Optional.empty(), name, placed(notes, midi.quarter())));
      } else {
        for (int channel : channels) {
          List<PlayedNote> some = notes.stream().filter(n -> n.channel() == channel).toList();
          add(
              lines,
              new TakeLine(i + 1, Optional.of(channel + 1), name, placed(some, midi.quarter())));
        }
      }
    }
    return lines;
  }

  private static void add(List<TakeLine> lines, TakeLine line) {
    if (!line.notes().isEmpty()) {
      lines.add(line);
    }
  }

  private static String name(MidiTracks.Track track) {
    return track.texts().stream()
        .filter(meta -> meta.type() == TRACK_NAME)
        .findFirst()
        .map(meta -> meta.text().strip())
        .orElse("");
  }

  /**
   * The notes as an instrument's, ticks in the place of nanoseconds, in order of their strokes;
   * those of drums only where their channel is asked for.
   */
  private static List<PlayedNote> notes(MidiTracks.Track track, int asked) {
    PlayedNotes playing = new PlayedNotes();
    List<PlayedNote> notes = new ArrayList<>();
    for (Received message : track.messages()) {
      if (message.channel() != DRUMS || asked == DRUMS) {
        notes.addAll(playing.take(message));
      }
    }
    notes.addAll(playing.lost(track.ticks()));
    notes.sort(Comparator.comparingLong(PlayedNote::on).thenComparingInt(PlayedNote::key));
    return notes;
  }

  private static List<PlacedNote> placed(List<PlayedNote> notes, double quarter) {
    OptionalInt first = GuitarChannels.first(notes);
    return notes.stream().map(n -> placed(n, quarter, first)).toList();
  }

  private static PlacedNote placed(PlayedNote note, double quarter, OptionalInt first) {
    PlacedNote placed = note.placed(note.on() / quarter, note.off() / quarter);
    return first.isEmpty() ? placed : placed.onString(note.channel() - first.getAsInt() + 1);
  }
}

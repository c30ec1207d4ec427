package hingetone.output;

import hingetone.hearing.HeardNote;
import hingetone.hearing.Transcription;
import hingetone.hearing.Transcription.Placed;
import hingetone.midi.BentLine;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A recording as a MIDI file: a channel for each string where two sound at once, else one. */
public final class HeardMidi {
  private static final double QUARTERS_A_MINUTE = 120;
  private static final int PERCUSSION = 9;

  /** Bends smaller than this are not written, in semitones. */
  private static final double LEAST_BEND = 0.03;

  private HeardMidi() {}

  public static void write(Path file, Transcription written, OutputStream output)
      throws IOException {
    List<Placed> notes = written.notes();
    boolean together = false;
    for (int i = 1; i < notes.size(); i++) {
      together |= notes.get(i).note().at() < notes.get(i - 1).note().end();
    }
    List<BentLine.Note> line = new ArrayList<>();
    for (Placed placed : notes) {
      line.add(note(placed, together));
    }
    BentLine.write(file.getFileName().toString(), QUARTERS_A_MINUTE, line, output);
  }

  private static BentLine.Note note(Placed placed, boolean together) {
    HeardNote note = placed.note();
    int string = placed.spot().map(spot -> spot.string() - 1).orElse(0);
    int channel = !together ? 0 : string >= PERCUSSION ? string + 1 : string;
    int key = Math.max(0, Math.min(127, note.fretted()));
    return new BentLine.Note(note.at(), note.end(), channel, key, velocity(note), bends(note, key));
  }

  /** A full-scale note is 127; each dB below takes two. */
  private static int velocity(HeardNote note) {
    return (int) Math.max(1, Math.min(127, Math.round(127 + 2 * note.level())));
  }

  private static List<BentLine.Bend> bends(HeardNote note, int key) {
    List<BentLine.Bend> bends = new ArrayList<>();
    double last = 0;
    for (HeardNote.Point point : note.curve()) {
      double bend = point.midi() - key;
      if (Math.abs(bend - last) >= LEAST_BEND) {
        bends.add(new BentLine.Bend(point.at(), bend));
        last = bend;
      }
    }
    return bends;
  }
}

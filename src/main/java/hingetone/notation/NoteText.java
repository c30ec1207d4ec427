package hingetone.notation;

import hingetone.score.Note;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.time.Beats;
import java.util.List;

/**
 * A line of notes read from text in JFugue's notation with scientific octaves (middle C is C4, MIDI
 * 60): {@code A2q C3i D3i E3h | Rq G4h+B4h}.
 *
 * @param notes the notes, onsets in quarter notes from 0
 * @param length where the last note or rest ends, in quarter notes
 * @param barLines where a {@code |} stands, in quarter notes, in their order
 */
public record NoteText(List<Note> notes, Beats length, List<Beats> barLines) {
  /** The loudness of a note that states none. */
  public static final int PLAIN_VELOCITY = 64;

  public NoteText {
    notes = List.copyOf(notes);
    barLines = List.copyOf(barLines);
  }

  /**
   * Reads the text at some places of a source, one after the other: the lines of a block, or one
   * span for a text in one line. Whatever is wrong is reported where it stands.
   */
  public static Reading<NoteText> read(Source source, Span... spans) {
    return new NoteReader(source).read(List.of(spans));
  }
}

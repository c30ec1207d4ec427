package hingetone.notation;

import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jfugue.MusicStringParser;
import org.jfugue.ParserListenerAdapter;
import org.jfugue.Pattern;

/**
 * Gathers what JFugue's parser says as exact notes: lengths recovered as fractions from its
 * doubles, ties merged into one note.
 */
final class NoteListener extends ParserListenerAdapter {
  private static final long LARGEST_DENOMINATOR = 1_000_000;

  private final List<Note> notes = new ArrayList<>();
  private final Map<Integer, Integer> openTies = new HashMap<>();
  private Beats now = Beats.ZERO;
  private Beats groupStart = Beats.ZERO;

  /** Parses a music string that is known to be safe. One parser each: shared ones leak state. */
  static NoteListener parse(String musicString) {
    NoteListener listener = new NoteListener();
    MusicStringParser parser = new MusicStringParser();
    parser.addParserListener(listener);
    parser.parse(new Pattern(musicString));
    return listener;
  }

  /** The notes, onsets and lengths in quarter notes. */
  List<Note> notes() {
    return notes;
  }

  /** Where the last note or rest ends, in quarter notes. */
  Beats end() {
    return now;
  }

  @Override
  public void noteEvent(org.jfugue.Note note) {
    groupStart = now;
    put(note);
  }

  @Override
  public void parallelNoteEvent(org.jfugue.Note note) {
    now = groupStart;
    put(note);
  }

  private void put(org.jfugue.Note note) {
    Beats length = fraction(note.getDecimalDuration()).times(4);
    Beats onset = now;
    now = now.plus(length);
    if (note.isRest()) {
      return;
    }
    int key = note.getValue();
    Integer tied = note.isEndOfTie() ? openTies.remove(key) : null;
    if (tied == null) {
      notes.add(new Note(onset, length, key, note.getAttackVelocity()));
      tied = notes.size() - 1;
    } else {
      notes.set(tied, notes.get(tied).withLength(now.minus(notes.get(tied).onset())));
    }
    if (note.isStartOfTie()) {
      openTies.put(key, tied);
    }
  }

  /** The simplest fraction within 1e-9 of a double, by continued fractions. */
  static Beats fraction(double value) {
    long h0 = 0;
    long h1 = 1;
    long k0 = 1;
    long k1 = 0;
    double rest = value;
    while (k1 <= LARGEST_DENOMINATOR) {
      long whole = (long) Math.floor(rest);
      long h = whole * h1 + h0;
      long k = whole * k1 + k0;
      if (Math.abs((double) h / k - value) < 1e-9) {
        return Beats.of(h, k);
      }
      h0 = h1;
      h1 = h;
      k0 = k1;
      k1 = k;
      rest = 1 / (rest - whole);
    }
    throw new ArithmeticException("not a simple fraction: " + value);
  }
}

package hingetone.sequencer;

import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.List;

/** Small scores for tests. */
public final class PlayingBand {
  private PlayingBand() {}

  /** Bars of 4/4 at a tempo: a drum on each beat, one bass note a bar, long as the bar. */
  static Score plain(int bars, int tempo) {
    return score(bars, tempo, 0, bass(bars, 1));
  }

  /** As {@link #plain}, with so many bars counted in by the drums. */
  static Score countedIn(int bars, int tempo, int countIn) {
    return score(bars, tempo, countIn, bass(bars, 1));
  }

  /** Bars of 4/4 whose only notes are these. */
  public static Score of(int bars, int tempo, Role role, Note... notes) {
    return new Score(
        "Test", Beats.ZERO, Beats.of(4L * bars), marks(bars, tempo), List.of(part(role, notes)));
  }

  static Part part(Role role, Note... notes) {
    return new Part(role, Sound.of(role == Role.DRUMS ? 0 : 33), List.of(notes));
  }

  private static Score score(int bars, int tempo, int countIn, Part bass) {
    List<Note> drums = new ArrayList<>();
    for (int beat = -4 * countIn; beat < 4 * bars; beat++) {
      drums.add(new Note(Beats.of(beat), Beats.of(1, 4), beat < 0 ? 37 : 42, 90));
    }
    Part part = new Part(Role.DRUMS, Sound.of(0), drums);
    return new Score(
        "Test",
        Beats.of(4L * countIn),
        Beats.of(4L * bars),
        marks(bars, tempo),
        List.of(part, bass));
  }

  private static Part bass(int bars, int length) {
    List<Note> notes = new ArrayList<>();
    for (int bar = 0; bar < bars; bar++) {
      notes.add(new Note(Beats.of(4L * bar), Beats.of(4L * length), 33 + bar % 12, 100));
    }
    return new Part(Role.BASS, Sound.of(33), notes);
  }

  /** Two sections, C minor and, from the middle on, F minor. */
  private static List<Mark> marks(int bars, int tempo) {
    Beats middle = Beats.of(4L * (bars / 2));
    List<Mark> marks = new ArrayList<>();
    marks.add(new Mark.OfMeter(Beats.ZERO, Meter.COMMON));
    marks.add(new Mark.OfTempo(Beats.ZERO, Tempo.of(tempo)));
    marks.add(new Mark.OfSection(Beats.ZERO, "low"));
    marks.add(new Mark.OfKey(Beats.ZERO, Key.parse("C minor").orElseThrow()));
    if (bars > 1) {
      marks.add(new Mark.OfSection(middle, "high"));
      marks.add(new Mark.OfKey(middle, Key.parse("F minor").orElseThrow()));
    }
    return marks;
  }
}

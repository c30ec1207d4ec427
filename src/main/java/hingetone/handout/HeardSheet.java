package hingetone.handout;

import hingetone.handout.SheetNote.Bend;
import hingetone.handout.SheetNote.Grace;
import hingetone.handout.SheetNote.Joint;
import hingetone.handout.SheetNote.Way;
import hingetone.hearing.HeardNote;
import hingetone.hearing.Technique;
import hingetone.neck.Fretboard;
import hingetone.neck.Spot;
import hingetone.print.HeardBars;
import hingetone.print.HeardBars.Barred;
import hingetone.theory.Key;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A recording as a sheet: what was heard of each note as it is written. */
final class HeardSheet {
  /** A slide starts from the note before when that is this near, in semitones. */
  private static final double SAME_PITCH = 0.6;

  /** A note this long after the end of the one before is not joined to it, in seconds. */
  private static final double APART = 0.15;

  private static final double QUARTER_TONE = 0.5;

  private HeardSheet() {}

  static Sheet of(String title, Fretboard neck, HeardBars bars, Map<Position, String> words) {
    List<SheetNote> notes = new ArrayList<>();
    for (int i = 0; i < bars.notes().size(); i++) {
      notes.add(note(bars, i));
    }
    return new Sheet(
        title,
        neck.tuning(),
        neck.capo(),
        bars.form(),
        bars.charted(),
        bars.firstBar(),
        bars.lastBar(),
        notes,
        words.entrySet().stream().map(w -> new Sheet.Words(w.getKey(), w.getValue())).toList());
  }

  private static SheetNote note(HeardBars bars, int index) {
    Barred barred = bars.notes().get(index);
    HeardNote note = barred.placed().note();
    Optional<Barred> before = before(bars.notes(), index);
    Key key = bars.key(barred);
    Optional<Joint> joint = before.flatMap(b -> joint(b, barred));
    boolean graced = note.technique() == Technique.SLIDE && joint.isEmpty();
    return new SheetNote(
        barred.start(),
        barred.end(),
        key.spell(note.fretted()),
        barred.placed().spot(),
        bends(note),
        joint,
        graced ? grace(key, barred) : Optional.empty(),
        note.vibrato());
  }

  /** The note before, where it is struck alone: of two it is not written which one leads on. */
  private static Optional<Barred> before(List<Barred> notes, int index) {
    boolean none = index == 0;
    boolean together =
        index > 1 && notes.get(index - 1).start().equals(notes.get(index - 2).start());
    return none || together ? Optional.empty() : Optional.of(notes.get(index - 1));
  }

  /** How the string leads from a note to the next, where it does. */
  private static Optional<Joint> joint(Barred from, Barred to) {
    HeardNote before = from.placed().note();
    HeardNote after = to.placed().note();
    boolean same = string(from).equals(string(to)) && after.at() - before.end() < APART;
    if (same && after.technique() == Technique.LEGATO) {
      return Optional.of(after.fretted() >= before.fretted() ? Joint.HAMMER_ON : Joint.PULL_OFF);
    }
    boolean slid = after.technique() == Technique.SLIDE;
    boolean near = Math.abs(before.reached() - after.struck()) < SAME_PITCH;
    return same && slid && near ? Optional.of(Joint.SLIDE) : Optional.empty();
  }

  private static Optional<Integer> string(Barred note) {
    return note.placed().spot().map(Spot::string);
  }

  private static Optional<Grace> grace(Key key, Barred barred) {
    HeardNote note = barred.placed().note();
    int from = (int) Math.round(note.struck());
    int away = from - note.fretted();
    Optional<Spot> spot = barred.placed().spot().map(s -> s.up(away)).filter(s -> s.fret() >= 0);
    return away == 0 ? Optional.empty() : Optional.of(new Grace(key.spell(from), spot));
  }

  private static List<Bend> bends(HeardNote note) {
    Bend back = new Bend(note.bent(), Way.RELEASE);
    return switch (note.technique()) {
      case BEND -> List.of(new Bend(note.bent(), Way.UP));
      case CURL -> List.of(new Bend(QUARTER_TONE, Way.UP));
      case PREBEND -> List.of(new Bend(note.bent(), Way.BEFORE), back);
      case RELEASE -> List.of(new Bend(note.bent(), Way.UP), back);
      case PLAIN, SLIDE, LEGATO -> List.of();
    };
  }
}

package hingetone.sequencer;

import hingetone.midi.MidiNote;
import hingetone.score.Mark;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Cuts a lap's score into bars, going once through its marks and once through its notes. */
final class LapCutter {
  private final List<Mark> marks;
  private final List<MidiNote> notes;
  private int nextMark;
  private int nextNote;

  // What holds at the place gone to.
  private Meter meter = Meter.COMMON;
  private Tempo tempo = Tempo.of(100);
  private Optional<Mark.OfSection> section = Optional.empty();
  private Optional<Key> key = Optional.empty();
  private final Map<Role, Sound> sounds = new EnumMap<>(Role.class);

  private LapCutter(Score score) {
    this.marks = score.marks();
    this.notes = MidiNote.of(score.parts());
    for (Part part : score.parts()) {
      sounds.put(part.role(), part.sound());
    }
  }

  static Lap cut(int number, Score score) {
    LapCutter cutter = new LapCutter(score);
    cutter.goTo(Beats.ZERO);
    List<Lap.Bar> countIn = cutter.bars(score.countIn().negated(), Beats.ZERO);
    List<MidiNote> pickups = cutter.notesBefore(Beats.ZERO);
    List<Lap.Bar> bars = cutter.bars(Beats.ZERO, score.length());
    return new Lap(number, countIn, bars, pickups, score.bySound());
  }

  /** The bars of a stretch; those before time 0 are as bar 1 is. */
  private List<Lap.Bar> bars(Beats from, Beats to) {
    List<Lap.Bar> bars = new ArrayList<>();
    Beats start = from;
    while (start.isBefore(to)) {
      goTo(start);
      Beats end = start.plus(meter.barLength());
      bars.add(bar(start, end));
      start = end;
    }
    return bars;
  }

  private Lap.Bar bar(Beats start, Beats end) {
    List<MidiNote> inside = new ArrayList<>();
    for (MidiNote note : notesBefore(end)) {
      inside.add(note.later(start.negated()));
    }
    return new Lap.Bar(
        start,
        meter,
        tempo,
        section.map(Mark.OfSection::name),
        section.filter(mark -> mark.at().equals(start)).isPresent(),
        key,
        inside,
        new EnumMap<>(sounds));
  }

  private void goTo(Beats place) {
    while (nextMark < marks.size() && !marks.get(nextMark).at().isAfter(place)) {
      take(marks.get(nextMark++));
    }
  }

  private void take(Mark mark) {
    if (mark instanceof Mark.OfMeter changed) {
      meter = changed.meter();
    } else if (mark instanceof Mark.OfTempo changed) {
      tempo = changed.tempo();
    } else if (mark instanceof Mark.OfSection changed) {
      section = Optional.of(changed);
    } else if (mark instanceof Mark.OfKey changed) {
      key = Optional.of(changed.key());
    } else if (mark instanceof Mark.OfSound changed) {
      sounds.put(changed.role(), changed.sound());
    }
  }

  /** The notes not yet taken that start before a place. */
  private List<MidiNote> notesBefore(Beats place) {
    int first = nextNote;
    while (nextNote < notes.size() && notes.get(nextNote).on().isBefore(place)) {
      nextNote++;
    }
    return notes.subList(first, nextNote);
  }
}

package hingetone.score;

import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import hingetone.time.TempoMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Parts and marks over a length of music. Time 0 is the start of the form; notes and marks before 0
 * belong to a count-in.
 *
 * @param title what it is called
 * @param countIn length before time 0 in quarter notes, 0 or more
 * @param length length from time 0 in quarter notes
 * @param marks keys, sections, chords, meters and tempos, in order of time
 * @param parts the parts
 */
public record Score(String title, Beats countIn, Beats length, List<Mark> marks, List<Part> parts) {
  private static final Tempo USUAL = Tempo.of(100);

  public Score {
    marks = marks.stream().sorted(Comparator.comparing(Mark::at)).toList();
    parts = List.copyOf(parts);
  }

  /** The marks of one kind, in order of time. */
  public <M extends Mark> Stream<M> marks(Class<M> kind) {
    return marks.stream().filter(kind::isInstance).map(kind::cast);
  }

  /** The same score with one more part. */
  public Score with(Part part) {
    List<Part> more = new ArrayList<>(parts);
    more.add(part);
    return new Score(title, countIn, length, marks, more);
  }

  /** The part with a role, when the score has one. */
  public Optional<Part> part(Role role) {
    return parts.stream().filter(part -> part.role() == role).findFirst();
  }

  /**
   * How a part sounds: its own sound from the count-in on, then each change.
   *
   * @throws java.util.NoSuchElementException when there is no such part
   */
  public List<Mark.OfSound> sounds(Role role) {
    List<Mark.OfSound> sounds = new ArrayList<>();
    Sound last = part(role).orElseThrow().sound();
    sounds.add(new Mark.OfSound(countIn.negated(), role, last));
    for (Mark.OfSound mark : marks(Mark.OfSound.class).toList()) {
      if (mark.role() == role && !mark.sound().equals(last)) {
        last = mark.sound();
        sounds.add(mark);
      }
    }
    return sounds;
  }

  /**
   * Each part once for each sound it has in this score, its own first, with the notes it plays in
   * it: what a player has to load.
   */
  public List<Part> bySound() {
    return parts.stream().flatMap(part -> bySound(part).stream()).toList();
  }

  private List<Part> bySound(Part part) {
    Map<Sound, List<Note>> notes = new LinkedHashMap<>();
    notes.put(part.sound(), new ArrayList<>());
    List<Mark.OfSound> sounds = sounds(part.role());
    int holds = 0;
    for (Note note : part.notes()) {
      while (holds + 1 < sounds.size() && !sounds.get(holds + 1).at().isAfter(note.onset())) {
        holds++;
      }
      notes.computeIfAbsent(sounds.get(holds).sound(), s -> new ArrayList<>()).add(note);
    }
    List<Part> all = new ArrayList<>();
    notes.forEach((sound, played) -> all.add(new Part(part.role(), sound, played)));
    return all;
  }

  /**
   * Where the score's places lie on the clock. A tempo counts the notes that the meter holding
   * there counts; without a tempo mark it is 100 quarters a minute.
   */
  public TempoMap tempoMap() {
    List<TempoMap.Step> steps = new ArrayList<>();
    Tempo tempo = marks(Mark.OfTempo.class).findFirst().map(Mark.OfTempo::tempo).orElse(USUAL);
    Meter meter =
        marks(Mark.OfMeter.class).findFirst().map(Mark.OfMeter::meter).orElse(Meter.COMMON);
    steps.add(new TempoMap.Step(countIn.negated(), tempo.quartersPerMinute(meter)));
    for (Mark mark : marks) {
      if (mark instanceof Mark.OfTempo change) {
        tempo = change.tempo();
      } else if (mark instanceof Mark.OfMeter change) {
        meter = change.meter();
      }
      Beats quarters = tempo.quartersPerMinute(meter);
      TempoMap.Step last = steps.get(steps.size() - 1);
      if (!quarters.equals(last.quartersPerMinute())) {
        if (last.at().equals(mark.at())) {
          steps.remove(steps.size() - 1);
        }
        steps.add(new TempoMap.Step(mark.at(), quarters));
      }
    }
    return new TempoMap(steps);
  }

  /**
   * Laps played one after another as one score, which begins with the count-in of the first.
   *
   * @param laps at least one
   */
  public static Score inTurn(List<Score> laps) {
    List<Mark> marks = new ArrayList<>();
    Map<Role, Part> parts = new LinkedHashMap<>();
    Beats start = Beats.ZERO;
    for (Score lap : laps) {
      Beats from = start;
      lap.marks().forEach(mark -> marks.add(mark.later(from)));
      for (Part part : lap.parts()) {
        List<Note> notes = new ArrayList<>();
        part.notes().forEach(note -> notes.add(note.withOnset(note.onset().plus(from))));
        parts.merge(
            part.role(),
            new Part(part.role(), part.sound(), notes),
            (before, more) -> before.plus(more.notes()));
      }
      start = start.plus(lap.length());
    }
    Score first = laps.get(0);
    return new Score(first.title(), first.countIn(), start, marks, List.copyOf(parts.values()));
  }
}

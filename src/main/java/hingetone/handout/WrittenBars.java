package hingetone.handout;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.handout.SheetNote.Joint;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Notes cut into what can be written: for each bar notes and rests that fill it, each of a length
 * that one note sign has, tied where a sound goes on.
 */
final class WrittenBars {
  /**
   * Something written: notes struck together, or a rest.
   *
   * @param sign how long
   * @param notes what is struck; none for a rest
   * @param goesOn whether it is tied to the same notes after it
   * @param goneOn whether it is tied to the same notes before it
   * @param leadsTo how the note after it is reached from here, where it is not picked
   */
  record Event(
      NoteSign sign,
      List<SheetNote> notes,
      boolean goesOn,
      boolean goneOn,
      Optional<Joint> leadsTo) {
    static Event rest(NoteSign sign) {
      return new Event(sign, List.of(), false, false, Optional.empty());
    }
  }

  /** A sound between two places, in divisions from bar 1. */
  private record Sound(long start, long end, List<SheetNote> notes, Optional<Joint> leadsTo) {}

  private final Form form;
  private final NavigableMap<Long, Sound> sounds = new TreeMap<>();

  /**
   * @param form the form
   * @param notes the notes, in order; those that start together are struck together
   */
  WrittenBars(Form form, List<SheetNote> notes) {
    this.form = form;
    NavigableMap<Long, List<SheetNote>> struck = new TreeMap<>();
    for (SheetNote note : notes) {
      long start = note.start().toUnits(NoteSign.DIVISIONS);
      struck.computeIfAbsent(start, s -> new ArrayList<>()).add(note);
    }
    struck.forEach((start, together) -> sounds.put(start, sound(start, together, struck)));
  }

  private static Sound sound(
      long start, List<SheetNote> together, NavigableMap<Long, List<SheetNote>> struck) {
    Optional<Map.Entry<Long, List<SheetNote>>> next =
        Optional.ofNullable(struck.higherEntry(start));
    long end =
        together.stream()
            .mapToLong(note -> note.end().toUnits(NoteSign.DIVISIONS))
            .max()
            .orElseThrow();
    return new Sound(
        start,
        Math.min(end, next.map(Map.Entry::getKey).orElse(end)),
        together,
        next.flatMap(entry -> entry.getValue().get(0).joined()));
  }

  /**
   * What is written in a bar. Only in the count-in a silent bar is one rest: where chords stand
   * above, a rest in each group keeps them in their place with readers that move the symbol over a
   * bar-long rest to the next note.
   */
  List<Event> bar(int number) {
    Meter meter = form.bar(number).meter();
    long start = form.startOf(number).toUnits(NoteSign.DIVISIONS);
    long end = form.startOf(number).plus(meter.barLength()).toUnits(NoteSign.DIVISIONS);
    List<Long> changes = number < 1 ? List.of() : changes(form.bar(number), start);
    Cutting cutting = new Cutting(meter);
    List<Event> events = new ArrayList<>();
    long now = start;
    if (number < 1 && soundAt(now).isEmpty() && nextAfter(now) >= end) {
      return List.of(Event.rest(NoteSign.ofBar((int) (end - start))));
    }
    while (now < end) {
      Optional<Sound> sound = soundAt(now);
      long until = sound.map(Sound::end).orElse(nextAfter(now));
      until = Math.min(until, end);
      for (long change : changes) {
        until = change > now ? Math.min(until, change) : until;
      }
      int inBar = (int) (now - start);
      int room = (int) (until - now);
      NoteSign sign = sound.isPresent() ? cutting.note(inBar, room) : cutting.rest(inBar, room);
      long here = now;
      events.add(sound.map(s -> event(s, sign, here)).orElse(Event.rest(sign)));
      now += sign.length();
    }
    return events;
  }

  /** Where a chord starts in its bar. */
  static long place(Meter meter, ChartBar.Slot slot) {
    return meter.toQuarters(slot.beat().minus(Beats.ONE)).toUnits(NoteSign.DIVISIONS);
  }

  /** The chord changes of a bar, so that each symbol has a note or a rest to stand on. */
  private static List<Long> changes(Form.Bar bar, long start) {
    return bar.chords().chords().stream().map(s -> start + place(bar.meter(), s)).toList();
  }

  private static Event event(Sound sound, NoteSign sign, long now) {
    boolean goesOn = now + sign.length() < sound.end;
    Optional<Joint> leadsTo = goesOn ? Optional.empty() : sound.leadsTo;
    return new Event(sign, sound.notes, goesOn, now > sound.start, leadsTo);
  }

  private Optional<Sound> soundAt(long now) {
    return Optional.ofNullable(sounds.floorEntry(now))
        .map(Map.Entry::getValue)
        .filter(sound -> now < sound.end);
  }

  private long nextAfter(long now) {
    return Optional.ofNullable(sounds.higherKey(now)).orElse(Long.MAX_VALUE);
  }
}

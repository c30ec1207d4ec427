package hingetone.handout;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.neck.Spot;
import hingetone.phrase.Tone;
import hingetone.phrase.maker.MadePhrase;
import hingetone.time.Beats;
import hingetone.time.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Phrases cut into what can be written: for each bar notes and rests that fill it, each of a length
 * that one note sign has, tied where a sound goes on.
 */
final class WrittenBars {
  /** A note that is struck, and where. */
  record Struck(Tone tone, Spot spot) {}

  /**
   * Something written: notes struck together, or a rest.
   *
   * @param sign how long
   * @param notes what is struck; none for a rest
   * @param goesOn whether it is tied to the same notes after it
   * @param goneOn whether it is tied to the same notes before it
   */
  record Event(NoteSign sign, List<Struck> notes, boolean goesOn, boolean goneOn) {}

  /** A sound between two places, in divisions from bar 1. */
  private record Sound(long start, long end, List<Struck> notes) {}

  private final Form form;
  private final List<Sound> sounds = new ArrayList<>();

  /**
   * @param form the form
   * @param made the phrases, in order
   */
  WrittenBars(Form form, List<MadePhrase> made) {
    this.form = form;
    Map<Long, List<Struck>> struck = new TreeMap<>();
    Map<Long, Long> ends = new TreeMap<>();
    for (MadePhrase phrase : made) {
      Beats landing = form.quarters(phrase.prompt().landOn());
      for (int i = 0; i < phrase.spots().size(); i++) {
        Tone tone = phrase.phrase().tones().get(i);
        long start = landing.plus(tone.onset()).toUnits(NoteSign.DIVISIONS);
        struck
            .computeIfAbsent(start, s -> new ArrayList<>())
            .add(new Struck(tone, phrase.spots().get(i)));
        ends.merge(start, landing.plus(tone.end()).toUnits(NoteSign.DIVISIONS), Math::max);
      }
    }
    List<Long> starts = List.copyOf(struck.keySet());
    for (int i = 0; i < starts.size(); i++) {
      long next = i + 1 < starts.size() ? starts.get(i + 1) : Long.MAX_VALUE;
      long start = starts.get(i);
      sounds.add(new Sound(start, Math.min(next, ends.get(start)), struck.get(start)));
    }
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
      return List.of(new Event(NoteSign.ofBar((int) (end - start)), List.of(), false, false));
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
      events.add(
          sound.map(s -> event(s, sign, here)).orElse(new Event(sign, List.of(), false, false)));
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
    return new Event(sign, sound.notes, now + sign.length() < sound.end, now > sound.start);
  }

  private Optional<Sound> soundAt(long now) {
    return sounds.stream().filter(s -> s.start <= now && now < s.end).findFirst();
  }

  private long nextAfter(long now) {
    return sounds.stream()
        .mapToLong(Sound::start)
        .filter(s -> s > now)
        .min()
        .orElse(Long.MAX_VALUE);
  }
}

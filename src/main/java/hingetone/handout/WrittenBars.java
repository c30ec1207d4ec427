package hingetone.handout;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.exchange.Made;
import hingetone.exchange.Tone;
import hingetone.neck.Spot;
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
  /** Lengths are counted in these parts of a quarter: enough for 64ths and for triplets. */
  static final int DIVISIONS = 48;

  /**
   * A note sign.
   *
   * @param length its length in {@link #DIVISIONS}
   * @param type its name in MusicXML
   * @param dotted whether it has a dot
   * @param triplet whether three of it take the time of two
   */
  record Sign(int length, String type, boolean dotted, boolean triplet) {}

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
  record Event(Sign sign, List<Struck> notes, boolean goesOn, boolean goneOn) {}

  private static final List<Sign> SIGNS =
      List.of(
          new Sign(288, "whole", true, false),
          new Sign(192, "whole", false, false),
          new Sign(144, "half", true, false),
          new Sign(96, "half", false, false),
          new Sign(72, "quarter", true, false),
          new Sign(48, "quarter", false, false),
          new Sign(36, "eighth", true, false),
          new Sign(32, "quarter", false, true),
          new Sign(24, "eighth", false, false),
          new Sign(18, "16th", true, false),
          new Sign(16, "eighth", false, true),
          new Sign(12, "16th", false, false),
          new Sign(8, "16th", false, true),
          new Sign(6, "32nd", false, false),
          new Sign(4, "32nd", false, true),
          new Sign(3, "64th", false, false),
          new Sign(2, "64th", false, true),
          new Sign(1, "128th", false, true));

  /** A sound between two places, in divisions from bar 1. */
  private record Sound(long start, long end, List<Struck> notes) {}

  private final Form form;
  private final List<Sound> sounds = new ArrayList<>();

  /**
   * @param form the form
   * @param made the phrases, in order
   */
  WrittenBars(Form form, List<Made> made) {
    this.form = form;
    Map<Long, List<Struck>> struck = new TreeMap<>();
    Map<Long, Long> ends = new TreeMap<>();
    for (Made phrase : made) {
      Beats landing = form.quarters(phrase.prompt().landOn());
      for (int i = 0; i < phrase.spots().size(); i++) {
        Tone tone = phrase.phrase().tones().get(i);
        long start = landing.plus(tone.onset()).toUnits(DIVISIONS);
        struck
            .computeIfAbsent(start, s -> new ArrayList<>())
            .add(new Struck(tone, phrase.spots().get(i)));
        ends.merge(start, landing.plus(tone.end()).toUnits(DIVISIONS), Math::max);
      }
    }
    List<Long> starts = List.copyOf(struck.keySet());
    for (int i = 0; i < starts.size(); i++) {
      long next = i + 1 < starts.size() ? starts.get(i + 1) : Long.MAX_VALUE;
      long start = starts.get(i);
      sounds.add(new Sound(start, Math.min(next, ends.get(start)), struck.get(start)));
    }
  }

  /** What is written in a bar. */
  List<Event> bar(int number) {
    Meter meter = form.bar(number).meter();
    long start = form.startOf(number).toUnits(DIVISIONS);
    long end = form.startOf(number).plus(meter.barLength()).toUnits(DIVISIONS);
    List<Long> changes = number < 1 ? List.of() : changes(form.bar(number), start);
    int beat = (int) meter.beatLength().toUnits(DIVISIONS);
    List<Event> events = new ArrayList<>();
    long now = start;
    while (now < end) {
      Optional<Sound> sound = soundAt(now);
      long until = sound.map(Sound::end).orElse(nextAfter(now));
      until = Math.min(until, end);
      for (long change : changes) {
        until = change > now ? Math.min(until, change) : until;
      }
      Sign sign = sign((int) (now - start), (int) (until - now), beat);
      long here = now;
      events.add(
          sound.map(s -> event(s, sign, here)).orElse(new Event(sign, List.of(), false, false)));
      now += sign.length;
    }
    return events;
  }

  /** Where a chord starts in its bar. */
  static long place(Meter meter, ChartBar.Slot slot) {
    return meter.toQuarters(slot.beat().minus(Beats.ONE)).toUnits(DIVISIONS);
  }

  /** The chord changes of a bar, so that each symbol has a note or a rest to stand on. */
  private static List<Long> changes(Form.Bar bar, long start) {
    return bar.chords().chords().stream().map(s -> start + place(bar.meter(), s)).toList();
  }

  private static Event event(Sound sound, Sign sign, long now) {
    return new Event(sign, sound.notes, now + sign.length < sound.end, now > sound.start);
  }

  /** The longest sign that fits; one that starts between two beats does not hide the next beat. */
  private static Sign sign(int inBar, int room, int beat) {
    int into = inBar % beat;
    int most = into == 0 ? room : Math.min(room, beat - into);
    return SIGNS.stream().filter(sign -> sign.length <= most).findFirst().orElseThrow();
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

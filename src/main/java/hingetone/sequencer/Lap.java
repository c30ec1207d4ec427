package hingetone.sequencer;

import hingetone.midi.MidiEvents;
import hingetone.midi.TimedMessage;
import hingetone.score.Mark;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A lap's score cut into bars, ready to be played in any order.
 *
 * @param number the lap, from 1
 * @param countIn the bars before bar 1
 * @param bars the bars of the form
 * @param pickups notes before time 0 of a lap without a count-in, which belong to the lap before
 * @param parts the parts in each of their sounds
 */
record Lap(
    int number, List<Bar> countIn, List<Bar> bars, List<PlacedNote> pickups, List<Part> parts) {

  /**
   * One bar.
   *
   * @param section the section it belongs to; empty where the score names none
   * @param opensSection whether that section begins with it
   * @param tempo the tempo the chart asks for
   * @param notes the notes that start in it
   * @param parts the parts with the sounds they have in it
   */
  record Bar(
      Beats start,
      Meter meter,
      Tempo tempo,
      Optional<String> section,
      boolean opensSection,
      Optional<Key> key,
      List<PlacedNote> notes,
      List<Part> parts) {
    Beats length() {
      return meter.barLength();
    }
  }

  /**
   * A note in a bar, its times relative to the bar line.
   *
   * @param onOffset how much later than its place it starts, in nanoseconds
   * @param offOffset how much later than its place it ends, in nanoseconds
   */
  record PlacedNote(
      Role role, int key, int velocity, Beats on, Beats off, long onOffset, long offOffset) {
    PlacedNote moved(Beats by) {
      return new PlacedNote(role, key, velocity, on.plus(by), off.plus(by), onOffset, offOffset);
    }
  }

  Lap {
    countIn = List.copyOf(countIn);
    bars = List.copyOf(bars);
    pickups = List.copyOf(pickups);
    if (bars.isEmpty()) {
      throw new IllegalArgumentException("a lap has at least one bar");
    }
  }

  static Lap of(int number, Score score) {
    List<PlacedNote> notes = notes(score);
    List<Bar> bars = new ArrayList<>();
    Beats start = Beats.ZERO;
    while (start.isBefore(score.length())) {
      bars.add(bar(score, start, start, notes));
      start = start.plus(bars.get(bars.size() - 1).length());
    }
    List<Bar> countIn = new ArrayList<>();
    Beats before = score.countIn().negated();
    while (before.isNegative()) {
      countIn.add(bar(score, before, Beats.ZERO, notes));
      before = before.plus(countIn.get(countIn.size() - 1).length());
    }
    boolean early = countIn.isEmpty();
    List<PlacedNote> pickups =
        early ? notes.stream().filter(n -> n.on().isNegative()).toList() : List.of();
    return new Lap(number, countIn, bars, pickups, score.bySound());
  }

  /** Whether its bars, and a first lap's count-in, are as long as those of a first lap. */
  boolean fits(Lap first) {
    return meters(bars).equals(meters(first.bars))
        && (number > 1 || meters(countIn).equals(meters(first.countIn)));
  }

  private static List<Meter> meters(List<Bar> bars) {
    return bars.stream().map(Bar::meter).toList();
  }

  /** How long it lasts from bar 1 on. */
  Beats length() {
    Bar last = bars.get(bars.size() - 1);
    return last.start().plus(last.length());
  }

  private static Bar bar(Score score, Beats start, Beats asAt, List<PlacedNote> notes) {
    Meter meter =
        last(score, Mark.OfMeter.class, asAt).map(Mark.OfMeter::meter).orElse(Meter.COMMON);
    Beats end = start.plus(meter.barLength());
    return new Bar(
        start,
        meter,
        last(score, Mark.OfTempo.class, asAt).map(Mark.OfTempo::tempo).orElse(Tempo.of(100)),
        last(score, Mark.OfSection.class, asAt).map(Mark.OfSection::name),
        score.marks(Mark.OfSection.class).anyMatch(m -> m.at().equals(start)),
        last(score, Mark.OfKey.class, asAt).map(Mark.OfKey::key),
        notes.stream()
            .filter(n -> !n.on().isBefore(start) && n.on().isBefore(end))
            .map(n -> n.moved(start.negated()))
            .toList(),
        score.parts().stream().map(p -> p.withSound(score.soundAt(p, asAt))).toList());
  }

  private static <M extends Mark> Optional<M> last(Score score, Class<M> kind, Beats at) {
    return score.marks(kind).filter(m -> !m.at().isAfter(at)).reduce((a, b) -> b);
  }

  /** Note-ons and note-offs paired; in this order a key's messages come by turns. */
  private static List<PlacedNote> notes(Score score) {
    List<PlacedNote> notes = new ArrayList<>();
    Map<Integer, TimedMessage> struck = new HashMap<>();
    for (TimedMessage m : MidiEvents.of(score)) {
      int place = m.message().getChannel() * 128 + m.message().getData1();
      if (MidiEvents.isNoteOn(m.message())) {
        struck.put(place, m);
      } else {
        notes.add(note(struck.remove(place), m));
      }
    }
    notes.sort(Comparator.comparing(PlacedNote::on));
    return notes;
  }

  private static PlacedNote note(TimedMessage on, TimedMessage off) {
    return new PlacedNote(
        on.role(),
        on.message().getData1(),
        on.message().getData2(),
        on.at(),
        off.at(),
        on.offsetMicros() * 1000,
        off.offsetMicros() * 1000);
  }
}

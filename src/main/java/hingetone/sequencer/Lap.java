package hingetone.sequencer;

import hingetone.midi.MidiNote;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.theory.Key;
import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
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
    int number, List<Bar> countIn, List<Bar> bars, List<MidiNote> pickups, List<Part> parts) {

  /**
   * One bar.
   *
   * @param section the section it belongs to; empty where the score names none
   * @param opensSection whether that section begins with it
   * @param tempo the tempo the chart asks for
   * @param notes the notes that start in it, placed from its bar line
   * @param sounds how each part sounds in it
   */
  record Bar(
      Beats start,
      Meter meter,
      Tempo tempo,
      Optional<String> section,
      boolean opensSection,
      Optional<Key> key,
      List<MidiNote> notes,
      Map<Role, Sound> sounds) {
    Beats length() {
      return meter.barLength();
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
    return LapCutter.cut(number, score);
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
}

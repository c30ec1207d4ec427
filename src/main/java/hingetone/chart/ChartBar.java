package hingetone.chart;

import hingetone.theory.Chord;
import hingetone.theory.Interval;
import hingetone.theory.Key;
import hingetone.theory.NoteName;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;

/**
 * The chords of one bar, one after the other, filling it.
 *
 * @param chords the chords in order; the first starts on beat 1
 */
public record ChartBar(List<Slot> chords) {
  /**
   * A chord and how long it holds.
   *
   * @param beat the beat it starts on, 1 being the bar line, in beats of the meter
   * @param beats how long it holds, in beats of the meter
   * @param chord the chord; empty for no chord
   */
  public record Slot(Beats beat, Beats beats, Optional<Chord> chord) {}

  public ChartBar {
    chords = List.copyOf(chords);
    if (chords.isEmpty()) {
      throw new IllegalArgumentException("a bar has at least one chord");
    }
  }

  /** The bar moved from one key to another, each chord by the interval of the tonics. */
  ChartBar moved(Key from, Key to) {
    Interval interval = from.tonic().to(to.tonic());
    return new ChartBar(
        chords.stream()
            .map(s -> new Slot(s.beat(), s.beats(), s.chord().map(c -> moved(c, interval))))
            .toList());
  }

  private static Chord moved(Chord chord, Interval interval) {
    return new Chord(
        readable(chord.root().plus(interval)),
        chord.quality(),
        chord.bass().map(bass -> readable(bass.plus(interval))));
  }

  /** Two sharps or flats are more than a player wants to read in a chord symbol. */
  private static NoteName readable(NoteName name) {
    return Math.abs(name.alteration()) > 1 ? name.simplified() : name;
  }
}

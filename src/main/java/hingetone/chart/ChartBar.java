package hingetone.chart;

import hingetone.theory.Chord;
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
}

package hingetone.screen;

import hingetone.time.Tempo;
import java.util.Optional;
import java.util.Set;

/**
 * What the band is set to, as it reports it.
 *
 * @param tempo the tempo now
 * @param keyShift semitones away from the chart's keys
 * @param everyKey whether each lap moves on to another key
 * @param muted the voices that are silent
 * @param volume the whole level, 0 to 100
 * @param click what the metronome does: empty when it is off
 * @param loop the bars that go round
 * @param dropsOut whether silent bars are on
 * @param ramp whether the tempo rises by itself
 * @param example what the machine plays of the phrases: empty when nothing
 */
public record Band(
    Tempo tempo,
    int keyShift,
    boolean everyKey,
    Set<Voice> muted,
    int volume,
    Optional<String> click,
    Optional<Loop> loop,
    boolean dropsOut,
    boolean ramp,
    Optional<String> example) {
  /**
   * Bars that go round.
   *
   * @param first the first, in the lap
   * @param last the last, in the lap
   */
  public record Loop(int first, int last) {}

  public Band {
    muted = Set.copyOf(muted);
  }

  /** A band at a tempo with nothing else set. */
  public static Band at(Tempo tempo) {
    return new Band(
        tempo,
        0,
        false,
        Set.of(),
        70,
        Optional.empty(),
        Optional.empty(),
        false,
        false,
        Optional.empty());
  }
}

package hingetone.screen;

import hingetone.time.Tempo;
import java.util.Optional;
import java.util.OptionalInt;
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
 * @param lastBar the last bar, laps counted on, the ending included; empty for no end
 */
public record BandSettings(
    Tempo tempo,
    int keyShift,
    boolean everyKey,
    Set<Fader> muted,
    int volume,
    Optional<String> click,
    Optional<Loop> loop,
    boolean dropsOut,
    boolean ramp,
    OptionalInt lastBar) {
  /**
   * Bars that go round.
   *
   * @param first the first, laps counted on
   * @param last the last, laps counted on
   */
  public record Loop(int first, int last) {}

  public BandSettings {
    muted = Set.copyOf(muted);
  }

  /** A band at a tempo and a volume with nothing else set. */
  public static BandSettings at(Tempo tempo, int volume) {
    return new BandSettings(
        tempo,
        0,
        false,
        Set.of(),
        volume,
        Optional.empty(),
        Optional.empty(),
        false,
        false,
        OptionalInt.empty());
  }
}

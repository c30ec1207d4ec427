package hingetone.sequencer;

import hingetone.score.Role;
import hingetone.time.Tempo;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What holds at the moment, for showing.
 *
 * @param motion whether it plays
 * @param tempo the tempo of the bar being played
 * @param loop the bars being looped, if any
 * @param keyShift how far the keys lie from the chart's, in semitones
 * @param keyWalk the interval it moves by with each pass, 0 for none
 * @param muted the parts that are muted
 * @param levels the level of each part in percent
 * @param volume the level of everything in percent
 * @param metronome how the click goes
 * @param silentBars how the band drops out
 * @param ramp the tempo ramp, if one is under way
 * @param end where it ends; empty for no end
 */
public record Status(
    Motion motion,
    Tempo tempo,
    Optional<Command.Loop> loop,
    int keyShift,
    int keyWalk,
    Set<Role> muted,
    Map<Role, Integer> levels,
    int volume,
    Metronome metronome,
    Command.SilentBars silentBars,
    Optional<Command.Ramp> ramp,
    Optional<End> end) {

  /**
   * Where it ends.
   *
   * @param laps after how many laps
   * @param bars how many bars those have
   * @param endingBars how many bars come after them
   */
  public record End(int laps, int bars, int endingBars) {
    /** The last bar that is played, counted on through the laps. */
    public int lastBar() {
      return bars + endingBars;
    }
  }

  /** Whether the music moves. */
  public enum Motion {
    /** The output is being opened; the music begins by itself. */
    STARTING,
    STOPPED,
    PLAYING,
    PAUSED
  }

  public Status {
    muted = Set.copyOf(muted);
    levels = Map.copyOf(levels);
  }

  /** Whether there are bars in which the band drops out. */
  public boolean dropsOut() {
    return silentBars.silent() > 0;
  }

  /** A band that has not begun, at a tempo and a volume, with nothing else set. */
  public static Status atRest(Tempo tempo, int volume) {
    return new Status(
        Motion.STARTING,
        tempo,
        Optional.empty(),
        0,
        0,
        Set.of(),
        Map.of(),
        volume,
        Metronome.OFF,
        Command.SilentBars.NONE,
        Optional.empty(),
        Optional.empty());
  }
}

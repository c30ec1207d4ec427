package hingetone.time;

import java.util.Arrays;

/**
 * Where the music is at a moment of the machine's clock, as it is heard: one writer (the sequencer)
 * and any number of readers, none of which ever waits.
 *
 * <p>The writer says in advance, on its own time line, where each stretch of even movement starts;
 * {@link #hearAfter} says how far that time line lies behind the machine's clock, output latency
 * included. The last {@value #KEPT} stretches are kept, so that something stamped a while ago can
 * still be placed.
 *
 * <pre>{@code
 * playhead.at(Clock.SYSTEM.nanos());   // bar 5 beat 2+1/2, lap 1, moving
 * }</pre>
 */
public final class Playhead {
  /** Positions are rounded down to this fraction of a beat. */
  public static final int FINENESS = 3840;

  private static final int KEPT = 64;

  /**
   * A stretch of even movement in one bar.
   *
   * @param from when it starts, in nanoseconds on the writer's time line
   * @param lap the lap, 0 in the count-in
   * @param bar the bar, counted on through the laps
   * @param beat the beat it starts on, 1 being the bar line
   * @param beats how many beats the bar has
   * @param nanosPerBeat how long a beat lasts; 0 where the music stands still
   */
  public record Stretch(long from, int lap, int bar, double beat, int beats, double nanosPerBeat) {}

  /**
   * What a reader gets.
   *
   * @param lap the lap, from 1; 0 in the count-in
   * @param position the place, bars counted on through the laps
   * @param moving whether the music moves
   */
  public record Place(int lap, Position position, boolean moving) {}

  private record Track(long behind, Stretch[] stretches) {}

  private static final Stretch NOWHERE = new Stretch(Long.MIN_VALUE / 2, 0, 1, 1, 4, 0);

  private volatile Track track = new Track(0, new Stretch[] {NOWHERE});

  /** The place that is heard at a moment of the machine's clock. */
  public Place at(long nanos) {
    Track now = track;
    return place(now, nanos - now.behind);
  }

  /** When something at a moment of the writer's time line is heard, on the machine's clock. */
  public long heardAt(long written) {
    return written + track.behind;
  }

  /** For the writer: the music moves on from here as the stretch says, whatever was said before. */
  public void enter(Stretch stretch) {
    Track old = track;
    int kept = old.stretches.length;
    while (kept > 0 && old.stretches[kept - 1].from >= stretch.from) {
      kept--;
    }
    int first = Math.max(0, kept - KEPT + 1);
    Stretch[] next = Arrays.copyOfRange(old.stretches, first, kept + 1);
    next[kept - first] = stretch;
    track = new Track(old.behind, next);
  }

  /** For the writer: its time line 0 is heard at this moment of the machine's clock. */
  public void hearAfter(long nanos) {
    track = new Track(nanos, track.stretches);
  }

  /** For the writer: the stretch that holds at a moment of its time line, cut to start there. */
  public Stretch stretchAt(long written) {
    Stretch s = find(track, written);
    return new Stretch(written, s.lap, s.bar, beat(s, written), s.beats, s.nanosPerBeat);
  }

  private static Place place(Track track, long written) {
    Stretch s = find(track, written);
    long fine = (long) Math.floor((beat(s, written) - 1) * FINENESS + 1e-3);
    long last = (long) s.beats * FINENESS - 1;
    Beats beat = Beats.of(Math.min(fine, last), FINENESS).plus(Beats.ONE);
    return new Place(s.lap, new Position(s.bar, beat), s.nanosPerBeat > 0);
  }

  private static double beat(Stretch s, long written) {
    double moved = s.nanosPerBeat > 0 ? Math.max(0, written - s.from) / s.nanosPerBeat : 0;
    return s.beat + moved;
  }

  private static Stretch find(Track track, long written) {
    Stretch[] all = track.stretches;
    int i = all.length - 1;
    while (i > 0 && all[i].from > written) {
      i--;
    }
    return all[i];
  }
}

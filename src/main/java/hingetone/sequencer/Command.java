package hingetone.sequencer;

import hingetone.score.Role;
import hingetone.time.Tempo;
import java.math.BigDecimal;

/**
 * A live change. Bars are counted on through the laps; whatever changes the order of bars or their
 * notes happens at the next bar line, everything else at once.
 */
public sealed interface Command {
  /** Starts from where the music stands: with the count-in from the top, else at once. */
  record Play() implements Command {}

  /** Stands still; nothing rings on. */
  record Pause() implements Command {}

  /** Stops and goes back to the top. */
  record Stop() implements Command {}

  /** Starts again from the top, with the count-in. */
  record Restart() implements Command {}

  /**
   * Sets the tempo of the section being played; sections with another tempo keep their ratio. Ends
   * a ramp.
   */
  record SetTempo(Tempo tempo) implements Command {}

  /** Raises or lowers the tempo by so many counted notes a minute. Ends a ramp. */
  record StepTempo(BigDecimal bpm) implements Command {
    public static StepTempo of(int bpm) {
      return new StepTempo(BigDecimal.valueOf(bpm));
    }
  }

  /**
   * One tap of the tempo; from the third on they set it.
   *
   * @param nanos when it was tapped, on the machine's clock
   */
  record Tap(long nanos) implements Command {}

  /**
   * Goes from one tempo to another in steps. A pass of a loop counts as a lap.
   *
   * @param start the tempo to begin with, at once
   * @param goal where it ends, above or below
   * @param step how far each time, positive
   * @param everyLaps after how many passes
   */
  record Ramp(Tempo start, Tempo goal, BigDecimal step, int everyLaps) implements Command {
    public Ramp {
      if (step.signum() <= 0 || everyLaps < 1) {
        throw new IllegalArgumentException("a ramp steps by more than 0 every lap or more");
      }
    }
  }

  /** Plays these bars over and over, both included; goes to the first when past the last. */
  record Loop(int firstBar, int lastBar) implements Command {
    public Loop {
      if (firstBar < 1 || lastBar < firstBar) {
        throw new IllegalArgumentException("no such loop: " + firstBar + " to " + lastBar);
      }
    }
  }

  /** Loops around the next change of key, the seam between laps included. */
  record LoopCrossing(int barsBefore, int barsAfter) implements Command {
    public LoopCrossing {
      if (barsBefore < 0 || barsAfter < 0 || barsBefore + barsAfter < 1) {
        throw new IllegalArgumentException("a loop has at least one bar");
      }
    }

    Loop around(int bar) {
      int first = Math.max(1, bar - barsBefore);
      return new Loop(first, Math.max(first, bar + barsAfter - 1));
    }
  }

  /** Plays on after the loop's last bar. */
  record Unloop() implements Command {}

  /** Goes to a bar at the next bar line; at once when not playing. */
  record Jump(int bar) implements Command {
    public Jump {
      if (bar < 1) {
        throw new IllegalArgumentException("no such bar: " + bar);
      }
    }
  }

  /** Goes to the next place of a section in this lap, else to its first. */
  record JumpToSection(String name) implements Command {}

  /**
   * Moves every part but drums and click by so many semitones from the next bar on. An octave from
   * the chart's keys is the farthest; a step beyond it is not taken.
   */
  record StepKey(int semitones) implements Command {}

  /**
   * Moves on by an interval with each pass, staying within −5 to 6 semitones of the chart; steps of
   * 1, 5, 7 or 11 go through all twelve keys. 0 ends it.
   */
  record KeyWalk(int semitones) implements Command {}

  /** Another band, whose laps are there, from the next bar on. */
  record Follow() implements Command {}

  record Mute(Role role, boolean muted) implements Command {}

  /** Raises or lowers the level of one part, within 0 to 100, in percent of what the score says. */
  record StepLevel(Role role, int percent) implements Command {}

  /** Raises or lowers the level of everything, within 0 to 100 percent. */
  record StepVolume(int percent) implements Command {}

  record Click(Metronome metronome) implements Command {}

  /**
   * The band drops out and comes back in time: so many bars with it, so many without, counted from
   * bar 1. No silent bars ends it. The click goes on.
   */
  record SilentBars(int sounding, int silent) implements Command {
    public static final SilentBars NONE = new SilentBars(1, 0);

    public SilentBars {
      if (sounding < 0 || silent < 0 || sounding + silent < 1) {
        throw new IllegalArgumentException("no such cycle of bars");
      }
    }

    boolean isSilent(int bar) {
      return bar >= 1 && (bar - 1) % (sounding + silent) >= sounding;
    }
  }
}

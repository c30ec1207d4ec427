package hingetone.sequencer;

import hingetone.time.Beats;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;

/**
 * MIDI clock for other gear: 24 a quarter note, start, stop, continue and song position as the MIDI
 * 1.0 specification has them.
 */
public final class ClockSignals {
  static final int PER_QUARTER = 24;

  /** A follower needs at least 1 ms between start or continue and the first clock. */
  static final long AHEAD_NANOS = 2_000_000;

  /** Song position has 14 bits of sixteenths. */
  private static final int POSITIONS = 16_384;

  private final boolean on;
  private boolean running;
  private boolean started;

  public ClockSignals(boolean on) {
    this.on = on;
  }

  boolean isOn() {
    return on;
  }

  void clock(long now, MessageSink sink) {
    send(ShortMessage.TIMING_CLOCK, 0, 0, now, sink);
  }

  /**
   * A bar of the form is about to begin.
   *
   * @param at where it starts, in quarter notes from bar 1
   * @param broken whether it does not follow from the bar before
   */
  void barComes(Beats at, boolean broken, long now, MessageSink sink) {
    if (running && !broken) {
      return;
    }
    stop(now, sink);
    if (at.isZero()) {
      send(ShortMessage.START, 0, 0, now, sink);
    } else {
      int sixteenths = (int) (at.times(4).floor() % POSITIONS);
      send(ShortMessage.SONG_POSITION_POINTER, sixteenths % 128, sixteenths / 128, now, sink);
      send(ShortMessage.CONTINUE, 0, 0, now, sink);
    }
    running = true;
    started = true;
  }

  /** Stops the follower until the next bar, which tells it where it is. */
  void stop(long now, MessageSink sink) {
    if (running) {
      send(ShortMessage.STOP, 0, 0, now, sink);
      running = false;
    }
  }

  /** Stopped for good: the next start is from the top. */
  void reset(long now, MessageSink sink) {
    stop(now, sink);
    started = false;
  }

  /** Goes on after a pause, exactly where it stopped. */
  void resume(long now, MessageSink sink) {
    if (started && !running) {
      send(ShortMessage.CONTINUE, 0, 0, now, sink);
      running = true;
    }
  }

  private void send(int status, int first, int second, long now, MessageSink sink) {
    if (!on) {
      return;
    }
    try {
      sink.send(now, new ShortMessage(status, first, second));
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }
}

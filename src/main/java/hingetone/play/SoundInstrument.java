package hingetone.play;

import hingetone.hearing.live.LiveEar;
import hingetone.hearing.signal.Resampler;
import hingetone.midi.Received;
import hingetone.sequencer.SequencerEvent;
import hingetone.sound.InputLine;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * A guitar through a sound input, heard note by note and handed on as if it were a MIDI instrument:
 * bends on the wheel over {@value #BEND_RANGE} semitones.
 */
public final class SoundInstrument implements Performance.Instrument {
  static final int BEND_RANGE = 12;

  private static final int NOTE_OFF = 0x80;
  private static final int NOTE_ON = 0x90;
  private static final int CONTROL = 0xB0;
  private static final int WHEEL = 0xE0;
  private static final int CENTRE = 8192;

  private final InputLine line;
  private final long delayNanos;

  /**
   * A guitar at an open line.
   *
   * @param delayMillis how much later than it is played, measured by what is heard, it comes in
   */
  public SoundInstrument(InputLine line, double delayMillis) {
    this.line = line;
    this.delayNanos = Math.round(delayMillis * TimeUnit.MILLISECONDS.toNanos(1));
  }

  @Override
  public Runnable listen(Consumer<Received> player, Consumer<SequencerEvent> events) {
    Thread thread = new Thread(() -> listenTo(player, events), "sound input");
    thread.setDaemon(true);
    thread.start();
    return line::close;
  }

  private void listenTo(Consumer<Received> player, Consumer<SequencerEvent> events) {
    Hand hand = new Hand(player);
    Resampler resampler = new Resampler(line.sampleRate());
    LiveEar ear = new LiveEar();
    for (Optional<float[]> block = line.read(); block.isPresent(); block = line.read()) {
      List<LiveEar.Event> heard = ear.hear(resampler.next(block.get()));
      heard.forEach(event -> hand.take(event, nanos(event.at())));
    }
    events.accept(new SequencerEvent.Lost("sound input"));
  }

  /** When something was played that the ear heard at a time, in seconds from the start. */
  private long nanos(double at) {
    return line.nanos(at * line.sampleRate()) - delayNanos;
  }

  /** Turns what is heard into messages of one channel. */
  static final class Hand {
    private final Consumer<Received> player;
    private int key = -1;

    Hand(Consumer<Received> player) {
      this.player = player;
      for (int[] control : new int[][] {{101, 0}, {100, 0}, {6, BEND_RANGE}, {38, 0}}) {
        player.accept(new Received(0, CONTROL, 0, control[0], control[1]));
      }
    }

    void take(LiveEar.Event event, long nanos) {
      if (event instanceof LiveEar.Struck struck) {
        key = (int) Math.round(struck.midi());
        wheel(struck.midi(), nanos);
        player.accept(new Received(nanos, NOTE_ON, 0, key, velocity(struck.decibels())));
      } else if (event instanceof LiveEar.Moved moved) {
        wheel(moved.midi(), nanos);
      } else if (key >= 0) {
        player.accept(new Received(nanos, NOTE_OFF, 0, key, 0));
        key = -1;
      }
    }

    private void wheel(double midi, long nanos) {
      long bend = Math.round((midi - key) / BEND_RANGE * CENTRE);
      int value = (int) Math.max(0, Math.min(2 * CENTRE - 1, CENTRE + bend));
      player.accept(new Received(nanos, WHEEL, 0, value % 128, value / 128));
    }

    /** Loudness as a velocity: 64 at −24 dB, a step for each half decibel. */
    private static int velocity(double decibels) {
      return (int) Math.max(1, Math.min(127, Math.round(64 + 2 * (decibels + 24))));
    }
  }
}

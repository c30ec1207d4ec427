package hingetone.transport;

import hingetone.port.PortOutput;
import hingetone.sequencer.Command;
import hingetone.sequencer.MessageSink;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Timeline;
import hingetone.time.Clock;
import java.util.Queue;
import java.util.concurrent.locks.LockSupport;
import javax.sound.midi.ShortMessage;

/**
 * Drives a timeline by the machine's clock: each message leaves at its absolute deadline, to a MIDI
 * port or, in silence, nowhere.
 */
final class ClockDriver implements Driver {
  private final Timeline timeline;
  private final Queue<Command> commands;
  private final Clock clock;
  private final Deadline deadline;
  private final PortOutput port;
  private final MessageSink sink;
  private final long origin;
  private volatile boolean ended;
  private volatile Thread thread;

  /**
   * A driver whose timeline starts now.
   *
   * @param latencyNanos how much later than it is sent a note is heard
   */
  ClockDriver(Playback playback, Deadline deadline, PortOutput port, long latencyNanos) {
    this.timeline = playback.timeline();
    this.commands = playback.commands();
    this.clock = playback.clock();
    this.deadline = deadline;
    this.port = port;
    this.origin = clock.nanos();
    this.sink =
        new MessageSink() {
          @Override
          public void send(long due, ShortMessage message) {
            port.send(message);
          }

          @Override
          public void tell(SequencerEvent moment) {
            playback.listener().accept(moment);
          }
        };
    playback.playhead().hearAfter(origin + latencyNanos);
  }

  @Override
  public void run() {
    thread = Thread.currentThread();
    while (!ended) {
      long next = turn();
      deadline.await(next, () -> ended || !commands.isEmpty() || port.isBack());
    }
    timeline.silence(sink);
  }

  /**
   * Sends what is due and obeys what was commanded.
   *
   * @return when to turn next, on the clock
   */
  long turn() {
    timeline.advance(clock.nanos() - origin + 1, sink);
    if (port.takeBack()) {
      timeline.repeatSetup(sink);
    }
    for (Command command = commands.poll(); command != null; command = commands.poll()) {
      timeline.apply(command, sink);
    }
    long next = timeline.nextDue();
    return next == Long.MAX_VALUE ? next : origin + next;
  }

  @Override
  public void wake() {
    LockSupport.unpark(thread);
  }

  @Override
  public void end() {
    ended = true;
    wake();
  }

  @Override
  public void closeDevice() {
    port.close();
  }
}

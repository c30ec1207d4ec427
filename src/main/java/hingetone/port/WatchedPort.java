package hingetone.port;

import hingetone.sequencer.SequencerEvent;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiUnavailableException;

/**
 * A MIDI port that may vanish and come back: {@link #check}, called now and then, notices both.
 *
 * @param <E> the end of the port that this program holds
 */
abstract class WatchedPort<E extends AutoCloseable> implements AutoCloseable {
  private static final long CLOSE_MILLIS = 150;
  private static final long CHECK_MILLIS = 1000;

  private record Open<E>(MidiDevice device, E end) {}

  private final String name;
  private final Port.Direction direction;
  private final Consumer<SequencerEvent> listener;
  private volatile Optional<Open<E>> open = Optional.empty();
  private volatile boolean closed;
  private boolean looks = true;
  private volatile Optional<ScheduledExecutorService> watch = Optional.empty();

  WatchedPort(String name, Port.Direction direction, Consumer<SequencerEvent> listener) {
    this.name = name;
    this.direction = direction;
    this.listener = listener;
  }

  final void tell(SequencerEvent moment) {
    listener.accept(moment);
  }

  /** Takes hold of an open device. */
  abstract E connect(MidiDevice device) throws MidiUnavailableException;

  /** Says farewell before the port is closed; may throw when it is gone. */
  abstract void leave(E end);

  /** What to do when the port is back. */
  abstract void returned();

  /**
   * Opens the port for the first time.
   *
   * @throws PortFailure when it is gone or another program holds it
   */
  final void openNow() throws PortFailure {
    try {
      open =
          Optional.of(
              opened(
                  Ports.device(name, direction)
                      .orElseThrow(() -> new MidiUnavailableException("it is gone"))));
    } catch (MidiUnavailableException | RuntimeException e) {
      throw new PortFailure(
          "The MIDI "
              + direction.word()
              + " \""
              + name
              + "\" cannot be opened ("
              + e.getMessage()
              + "): plug it in again, or close the program that uses it.",
          e);
    }
  }

  /** Checks every second, on a thread of its own, until closed. */
  public final void watch() {
    ScheduledExecutorService checks = Executors.newSingleThreadScheduledExecutor(this::daemon);
    checks.scheduleWithFixedDelay(this::check, CHECK_MILLIS, CHECK_MILLIS, TimeUnit.MILLISECONDS);
    watch = Optional.of(checks);
  }

  private Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "MIDI " + direction.word() + " watch");
    thread.setDaemon(true);
    return thread;
  }

  private Open<E> opened(MidiDevice device) throws MidiUnavailableException {
    device.open();
    return new Open<>(device, connect(device));
  }

  /** Does something with the port, if it is there; one that throws counts as lost. */
  final void use(Consumer<E> action) {
    Optional<Open<E>> now = open;
    if (now.isPresent()) {
      try {
        action.accept(now.get().end());
      } catch (RuntimeException e) {
        // A closed port throws IllegalStateException, a driver whatever it likes.
        lose(now.get());
      }
    }
  }

  /**
   * Looks whether the port is still there, or there again. Where the system cannot say, it is told
   * once and nothing changes.
   */
  public final void check() {
    try {
      look();
      looks = true;
    } catch (RuntimeException e) {
      if (looks) {
        listener.accept(new SequencerEvent.Trouble("The MIDI ports cannot be listed: " + e));
      }
      looks = false;
    }
  }

  private void look() {
    Optional<Open<E>> now = open;
    Optional<MidiDevice> device = Ports.device(name, direction);
    if (closed) {
      return;
    }
    if (now.isPresent() && (device.isEmpty() || !now.get().device().isOpen())) {
      lose(now.get());
    } else if (now.isEmpty() && device.isPresent()) {
      reopen(device.get());
    }
  }

  private synchronized void lose(Open<E> lost) {
    if (open.filter(o -> o == lost).isPresent()) {
      open = Optional.empty();
      listener.accept(new SequencerEvent.Lost(name));
      closeQuietly(lost);
    }
  }

  private synchronized void reopen(MidiDevice device) {
    if (closed) {
      return;
    }
    try {
      open = Optional.of(opened(device));
      returned();
      listener.accept(new SequencerEvent.Found(name));
    } catch (MidiUnavailableException | RuntimeException e) {
      // Listed but not ready yet: the next check tries again.
      open = Optional.empty();
    }
  }

  /** Closes the port; returns soon, whatever the port does. */
  @Override
  public final void close() {
    closed = true;
    watch.ifPresent(ScheduledExecutorService::shutdownNow);
    Optional<Open<E>> last = open;
    open = Optional.empty();
    last.ifPresent(o -> TimeLimit.run("MIDI port closing", CLOSE_MILLIS, () -> leaveAndClose(o)));
  }

  private void leaveAndClose(Open<E> last) {
    try {
      leave(last.end());
    } catch (RuntimeException e) {
      // It is gone: it cannot be told anything.
    }
    closeQuietly(last);
  }

  /** A vanished device may refuse to be closed; there is nothing left to do about it. */
  private void closeQuietly(Open<E> last) {
    try {
      last.end().close();
    } catch (Exception e) {
      // AutoCloseable may throw anything; the device is closed all the same.
    }
    try {
      last.device().close();
    } catch (RuntimeException e) {
      // See above.
    }
  }
}

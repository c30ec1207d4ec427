package hingetone.transport;

import java.util.Optional;
import java.util.function.Consumer;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;

/**
 * A MIDI port that may vanish and come back. One thread sends; another looks after it with {@link
 * #check}.
 */
final class PortOutput implements AutoCloseable {
  /** Where nothing is sent. */
  static final PortOutput NONE = new PortOutput("", moment -> {});

  private static final long CLOSE_MILLIS = 150;

  /** The device and its way in. */
  private record Open(MidiDevice device, Receiver receiver) {}

  private final String name;
  private final Consumer<Moment> listener;
  private volatile Optional<Open> open = Optional.empty();
  private volatile boolean back;
  private volatile boolean closed;

  private PortOutput(String name, Consumer<Moment> listener) {
    this.name = name;
    this.listener = listener;
  }

  /**
   * Opens a port.
   *
   * @throws PortFailure when it is gone or another program holds it
   */
  static PortOutput open(Port port, Consumer<Moment> listener) throws PortFailure {
    PortOutput output = new PortOutput(port.name(), listener);
    try {
      MidiDevice device =
          Ports.device(port.name(), Port.Direction.OUTPUT)
              .orElseThrow(() -> new MidiUnavailableException("it is gone"));
      output.open = Optional.of(output.opened(device));
      return output;
    } catch (MidiUnavailableException | RuntimeException e) {
      throw new PortFailure(
          "The MIDI output \""
              + port.name()
              + "\" cannot be opened ("
              + e.getMessage()
              + "):"
              + " plug it in again, or close the program that uses it.",
          e);
    }
  }

  private Open opened(MidiDevice device) throws MidiUnavailableException {
    device.open();
    return new Open(device, device.getReceiver());
  }

  /** Sends at once; what cannot be sent is dropped, and the port counts as lost. */
  void send(MidiMessage message) {
    Optional<Open> now = open;
    if (now.isPresent()) {
      try {
        now.get().receiver().send(message, -1);
      } catch (RuntimeException e) {
        // Receivers throw IllegalStateException when closed; drivers throw what they like.
        lose(now.get());
      }
    }
  }

  /** Looks whether the port is still there, or there again. */
  void check() {
    Optional<Open> now = open;
    Optional<MidiDevice> device = Ports.device(name, Port.Direction.OUTPUT);
    if (now.isPresent() && (device.isEmpty() || !now.get().device().isOpen())) {
      lose(now.get());
    } else if (now.isEmpty() && device.isPresent() && !closed) {
      reopen(device.get());
    }
  }

  private synchronized void lose(Open lost) {
    if (open.filter(o -> o == lost).isPresent() && !closed) {
      open = Optional.empty();
      listener.accept(new Moment.Lost(name));
      closeQuietly(lost);
    }
  }

  private synchronized void reopen(MidiDevice device) {
    try {
      open = Optional.of(opened(device));
      back = true;
      listener.accept(new Moment.Found(name));
    } catch (MidiUnavailableException | RuntimeException e) {
      // Listed but not ready yet: the next check tries again.
      open = Optional.empty();
    }
  }

  /** Whether the port has come back since last asked by {@link #takeBack}. */
  boolean isBack() {
    return back;
  }

  /** Whether the port has come back and must be set up again; says so once. */
  boolean takeBack() {
    boolean was = back;
    back = false;
    return was;
  }

  /** Ends every note and closes the port; returns soon, whatever the port does. */
  @Override
  public void close() {
    closed = true;
    Optional<Open> last = open;
    open = Optional.empty();
    last.ifPresent(o -> Limited.run("MIDI port closing", CLOSE_MILLIS, () -> endNotes(o)));
  }

  private static void endNotes(Open last) {
    try {
      for (int channel = 0; channel < 16; channel++) {
        last.receiver().send(new ShortMessage(ShortMessage.CONTROL_CHANGE, channel, 64, 0), -1);
        last.receiver().send(new ShortMessage(ShortMessage.CONTROL_CHANGE, channel, 123, 0), -1);
      }
    } catch (InvalidMidiDataException | RuntimeException e) {
      // The port is gone: it cannot be told anything.
    }
    closeQuietly(last);
  }

  private static void closeQuietly(Open last) {
    try {
      last.receiver().close();
      last.device().close();
    } catch (RuntimeException e) {
      // A vanished device may refuse to be closed; there is nothing left to do.
    }
  }
}

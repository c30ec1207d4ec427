package hingetone.port;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.Transmitter;
import javax.sound.midi.spi.MidiDeviceProvider;

/**
 * MIDI ports that Java Sound finds on the tests' class path. One is there from when a test plugs it
 * in until it is pulled out; plugged in again it is the same port.
 *
 * <pre>{@code
 * try (FakePorts.FakePort port = FakePorts.output("Test synth")) {
 *   ... open the port, send ...
 *   port.unplug();
 *   port.received();
 * }
 * }</pre>
 */
public final class FakePorts extends MidiDeviceProvider {
  private static final Map<String, FakePort> PLUGGED = new ConcurrentHashMap<>();

  /** Whether the system fails when it is asked which ports there are. */
  private static volatile boolean unlisted;

  public static FakePort output(String name) {
    return new FakePort(name, false).plug();
  }

  public static FakePort input(String name) {
    return new FakePort(name, true).plug();
  }

  /** Whether from now on the system fails when it is asked which ports there are. */
  static void unlist(boolean fails) {
    unlisted = fails;
  }

  @Override
  public MidiDevice.Info[] getDeviceInfo() {
    if (unlisted) {
      throw new IllegalStateException("the system does not answer");
    }
    return PLUGGED.values().stream().map(FakePort::info).toArray(MidiDevice.Info[]::new);
  }

  @Override
  public MidiDevice getDevice(MidiDevice.Info info) {
    return PLUGGED.values().stream()
        .filter(port -> port.info() == info)
        .findFirst()
        .map(FakePort::device)
        .orElseThrow(() -> new IllegalArgumentException("not one of mine: " + info));
  }

  /** One port, seen from outside the program. */
  public static final class FakePort implements AutoCloseable {
    private final MidiDevice.Info info;
    private final boolean input;
    private final List<MidiMessage> received = new CopyOnWriteArrayList<>();
    private volatile FakeDevice device;
    private volatile Optional<Receiver> listener = Optional.empty();
    private volatile boolean throwing;
    private volatile boolean stuck;

    private FakePort(String name, boolean input) {
      this.info = new MidiDevice.Info(name, "tests", "a port for tests", "1") {};
      this.input = input;
      this.device = new FakeDevice(this);
    }

    private MidiDevice.Info info() {
      return info;
    }

    private MidiDevice device() {
      return device;
    }

    public FakePort plug() {
      device = new FakeDevice(this);
      throwing = false;
      PLUGGED.put(info.getName() + input, this);
      return this;
    }

    public void unplug() {
      PLUGGED.remove(info.getName() + input);
    }

    /** From now on every message sent to it throws, as with a driver whose device has gone. */
    public void startThrowing() {
      throwing = true;
    }

    /** From now on whoever sends to it does not come back, except by an interrupt. */
    public void getStuck() {
      stuck = true;
    }

    /** What the program has sent. */
    public List<MidiMessage> received() {
      return new ArrayList<>(received);
    }

    /** From now on this gets what the program sends, instead of {@link #received}. */
    public void listen(Receiver receiver) {
      listener = Optional.of(receiver);
    }

    /** What the program gets from this port. */
    void play(MidiMessage message) {
      for (Transmitter transmitter : device.transmitters) {
        Optional.ofNullable(transmitter.getReceiver()).ifPresent(r -> r.send(message, 0));
      }
    }

    public boolean isOpen() {
      return device.isOpen();
    }

    @Override
    public void close() {
      unplug();
    }
  }

  private static final class FakeDevice implements MidiDevice {
    private final FakePort port;
    private final List<Transmitter> transmitters = new CopyOnWriteArrayList<>();
    private volatile boolean open;

    FakeDevice(FakePort port) {
      this.port = port;
    }

    @Override
    public Info getDeviceInfo() {
      return port.info;
    }

    @Override
    public void open() {
      open = true;
    }

    @Override
    public void close() {
      open = false;
    }

    @Override
    public boolean isOpen() {
      return open;
    }

    @Override
    public long getMicrosecondPosition() {
      return -1;
    }

    @Override
    public int getMaxReceivers() {
      return port.input ? 0 : -1;
    }

    @Override
    public int getMaxTransmitters() {
      return port.input ? -1 : 0;
    }

    @Override
    public Receiver getReceiver() throws MidiUnavailableException {
      if (port.input) {
        throw new MidiUnavailableException("nothing can be sent to an input");
      }
      return new FakeReceiver(this);
    }

    @Override
    public List<Receiver> getReceivers() {
      return List.of();
    }

    @Override
    public Transmitter getTransmitter() throws MidiUnavailableException {
      if (!port.input) {
        throw new MidiUnavailableException("nothing comes from an output");
      }
      FakeTransmitter transmitter = new FakeTransmitter(this);
      transmitters.add(transmitter);
      return transmitter;
    }

    @Override
    public List<Transmitter> getTransmitters() {
      return transmitters;
    }
  }

  private record FakeReceiver(FakeDevice device) implements Receiver {
    @Override
    public void send(MidiMessage message, long timeStamp) {
      FakePort port = device.port;
      if (port.throwing || !device.open) {
        throw new IllegalStateException("the device is gone");
      }
      while (port.stuck && !Thread.currentThread().isInterrupted()) {
        java.util.concurrent.locks.LockSupport.parkNanos(1_000_000);
      }
      if (port.listener.isPresent()) {
        port.listener.get().send(message, timeStamp);
      } else {
        port.received.add((MidiMessage) message.clone());
      }
    }

    @Override
    public void close() {}
  }

  private static final class FakeTransmitter implements Transmitter {
    private final FakeDevice device;
    private volatile Receiver receiver;

    FakeTransmitter(FakeDevice device) {
      this.device = device;
    }

    @Override
    public void setReceiver(Receiver other) {
      receiver = other;
    }

    @Override
    public Receiver getReceiver() {
      return receiver;
    }

    @Override
    public void close() {
      device.transmitters.remove(this);
    }
  }
}

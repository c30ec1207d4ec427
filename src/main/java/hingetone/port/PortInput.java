package hingetone.port;

import hingetone.midi.Received;
import hingetone.sequencer.SequencerEvent;
import hingetone.time.Clock;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Transmitter;

/**
 * A MIDI port to listen to: each channel message is stamped and passed on, on the driver's own
 * thread, so whoever gets it only puts it into a queue. Active sensing, clock, system exclusive and
 * every other system message are ignored.
 */
public final class PortInput extends WatchedPort<Transmitter> {
  private final Filter filter;
  private final Clock clock;
  private final Consumer<Received> player;

  /**
   * What is listened to.
   *
   * @param channels MIDI channels, 0 to 15
   * @param velocityFloor softer notes are not heard; their ends are, and mean nothing
   */
  public record Filter(Set<Integer> channels, int velocityFloor) {
    /** Everything. */
    public static final Filter ALL =
        new Filter(IntStream.range(0, 16).boxed().collect(Collectors.toSet()), 1);

    public Filter {
      channels = Set.copyOf(channels);
    }

    boolean passes(Received message) {
      return channels.contains(message.channel())
          && !(message.isNoteOn() && message.second() < velocityFloor);
    }
  }

  PortInput(
      Port port,
      Filter filter,
      Clock clock,
      Consumer<Received> player,
      Consumer<SequencerEvent> listener) {
    super(port.name(), Port.Direction.INPUT, listener);
    this.filter = filter;
    this.clock = clock;
    this.player = player;
  }

  /**
   * Listens to a port until closed, through its absences.
   *
   * @param player gets the messages
   * @param listener gets {@link SequencerEvent.Lost} and {@link SequencerEvent.Found}
   * @throws PortFailure when the port is gone or taken
   */
  public static PortInput open(
      Port port, Filter filter, Consumer<Received> player, Consumer<SequencerEvent> listener)
      throws PortFailure {
    PortInput input = new PortInput(port, filter, Clock.SYSTEM, player, listener);
    input.openNow();
    input.watch();
    return input;
  }

  @Override
  Transmitter connect(MidiDevice device) throws MidiUnavailableException {
    Transmitter transmitter = device.getTransmitter();
    transmitter.setReceiver(
        new Receiver() {
          @Override
          public void send(MidiMessage message, long unused) {
            hear(message, clock.nanos());
          }

          @Override
          public void close() {}
        });
    return transmitter;
  }

  private void hear(MidiMessage message, long nanos) {
    boolean ofChannel = message.getStatus() < 0xF0;
    if (ofChannel && message instanceof ShortMessage m) {
      Received received = Received.of(nanos, m);
      if (filter.passes(received)) {
        pass(received);
      }
    }
  }

  /** The system's thread that calls here must not meet a fault of ours. */
  private void pass(Received received) {
    try {
      player.accept(received);
    } catch (RuntimeException e) {
      tell(new SequencerEvent.Trouble("A message from the MIDI input was lost: " + e));
    }
  }

  @Override
  void returned() {}

  @Override
  void leave(Transmitter transmitter) {}
}

package hingetone.port;

import hingetone.midi.MidiEvents;
import hingetone.sequencer.SequencerEvent;
import java.util.function.Consumer;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;

/** A MIDI port to play through; while it is lost, messages are dropped. */
public final class PortOutput extends WatchedPort<Receiver> {
  private static final int PEDAL = 64;
  private static final int ALL_NOTES_OFF = 123;

  private volatile boolean back;

  /** A port that is not open: nothing is sent. */
  PortOutput(String name, Consumer<SequencerEvent> listener) {
    super(name, Port.Direction.OUTPUT, listener);
  }

  /** Nowhere. */
  public static PortOutput none() {
    return new PortOutput("", moment -> {});
  }

  public static PortOutput open(Port port, Consumer<SequencerEvent> listener) throws PortFailure {
    PortOutput output = new PortOutput(port.name(), listener);
    output.openNow();
    return output;
  }

  /** Sends at once; what cannot be sent is dropped, and the port counts as lost. */
  public void send(MidiMessage message) {
    use(receiver -> receiver.send(message, -1));
  }

  /** Whether the port has come back since {@link #takeBack} was asked. */
  public boolean isBack() {
    return back;
  }

  /** Whether the port has come back and must be set up again; says so once. */
  public boolean takeBack() {
    boolean was = back;
    back = false;
    return was;
  }

  @Override
  Receiver connect(MidiDevice device) throws MidiUnavailableException {
    return device.getReceiver();
  }

  @Override
  void returned() {
    back = true;
  }

  @Override
  void leave(Receiver receiver) {
    for (int channel = 0; channel < 16; channel++) {
      for (int controller : new int[] {PEDAL, ALL_NOTES_OFF}) {
        receiver.send(MidiEvents.message(ShortMessage.CONTROL_CHANGE, channel, controller, 0), -1);
      }
    }
  }
}

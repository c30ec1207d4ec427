package hingetone.port;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.midi.Received;
import hingetone.port.FakePorts.FakePort;
import hingetone.sequencer.SequencerEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.SysexMessage;
import org.junit.jupiter.api.Test;

class PortInputTest {
  private final List<Received> heard = new ArrayList<>();
  private final List<SequencerEvent> moments = new ArrayList<>();
  private long now;

  private PortInput open(FakePort port, PortInput.Filter filter) throws PortFailure {
    Port found = Ports.find("Test keys", Port.Direction.INPUT).port().orElseThrow();
    PortInput input = new PortInput(found, filter, () -> now, heard::add, moments::add);
    input.openNow();
    return input;
  }

  private static ShortMessage message(int status, int first, int second) {
    try {
      return new ShortMessage(status, first, second);
    } catch (InvalidMidiDataException e) {
      throw new IllegalArgumentException(e);
    }
  }

  @Test
  void channel_messages_are_stamped_and_everything_of_the_system_is_ignored() throws Exception {
    try (FakePort port = FakePorts.input("Test keys");
        PortInput input = open(port, PortInput.Filter.ALL)) {
      List<MidiMessage> system =
          List.of(
              message(ShortMessage.ACTIVE_SENSING, 0, 0),
              message(ShortMessage.TIMING_CLOCK, 0, 0),
              message(ShortMessage.SONG_SELECT, 3, 0),
              new SysexMessage(new byte[] {(byte) 0xF0, 0x7D, 1, (byte) 0xF7}, 4));
      now = 1000;
      port.play(message(0x90, 60, 100));
      system.forEach(port::play);
      now = 2000;
      port.play(message(0xE0, 0, 64));
      port.play(message(0x90, 60, 0));
      input.check();
      assertThat(moments).isEmpty();
      assertThat(heard)
          .containsExactly(
              new Received(1000, 0x90, 0, 60, 100),
              new Received(2000, 0xE0, 0, 0, 64),
              new Received(2000, 0x90, 0, 60, 0));
      assertThat(heard.get(0).isNoteOn()).isTrue();
      assertThat(heard.get(1).bend()).isZero();
      assertThat(heard.get(2).isNoteOff()).isTrue();
    }
  }

  @Test
  void other_channels_and_notes_below_the_floor_are_not_heard() throws Exception {
    try (FakePort port = FakePorts.input("Test keys");
        PortInput input = open(port, new PortInput.Filter(Set.of(2), 20))) {
      port.play(message(0x91, 60, 100));
      port.play(message(0x92, 61, 19));
      port.play(message(0x92, 62, 20));
      input.check();
      assertThat(heard).extracting(Received::first).containsExactly(62);
    }
  }

  @Test
  void a_port_that_vanishes_is_reported_and_taken_back() throws Exception {
    try (FakePort port = FakePorts.input("Test keys");
        PortInput input = open(port, PortInput.Filter.ALL)) {
      port.unplug();
      input.check();
      input.check();
      port.plug();
      port.play(message(0x90, 60, 1));
      input.check();
      port.play(message(0x90, 61, 1));
      assertThat(moments)
          .containsExactly(
              new SequencerEvent.Lost("Test keys"), new SequencerEvent.Found("Test keys"));
      assertThat(heard).extracting(Received::first).containsExactly(61);
    }
  }

  @Test
  void a_fault_behind_the_port_is_told_and_does_not_reach_the_systems_thread() throws Exception {
    try (FakePort port = FakePorts.input("Test keys");
        PortInput input =
            new PortInput(
                Ports.find("Test keys", Port.Direction.INPUT).port().orElseThrow(),
                PortInput.Filter.ALL,
                () -> now,
                received -> {
                  throw new IllegalStateException("no room");
                },
                moments::add)) {
      input.openNow();
      port.play(message(0x90, 60, 100));
      assertThat(moments)
          .containsExactly(
              new SequencerEvent.Trouble(
                  "A message from the MIDI input was lost:"
                      + " java.lang.IllegalStateException: no room"));
    }
  }

  @Test
  void ports_that_cannot_be_listed_are_told_once_and_the_port_stays_open() throws Exception {
    try (FakePort port = FakePorts.input("Test keys");
        PortInput input = open(port, PortInput.Filter.ALL)) {
      FakePorts.unlist(true);
      input.check();
      input.check();
      FakePorts.unlist(false);
      input.check();
      port.play(message(0x90, 60, 1));
      assertThat(heard).hasSize(1);
      assertThat(moments)
          .containsExactly(
              new SequencerEvent.Trouble(
                  "The MIDI ports cannot be listed:"
                      + " java.lang.IllegalStateException: the system does not answer"));
    } finally {
      FakePorts.unlist(false);
    }
  }
}

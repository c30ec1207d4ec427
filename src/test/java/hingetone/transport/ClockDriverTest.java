package hingetone.transport;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.port.FakePorts;
import hingetone.port.FakePorts.FakePort;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.PortOutput;
import hingetone.port.Ports;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sequencer.ClockSignals;
import hingetone.sequencer.Command;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.PlayingBand;
import hingetone.sequencer.ReadyLaps;
import hingetone.sequencer.Rig;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Timeline;
import hingetone.time.Beats;
import hingetone.time.Playhead;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;

/** The driver of a MIDI port against a fake port and a fake clock. */
class ClockDriverTest {
  private static final Score HELD =
      PlayingBand.of(1, 120, Role.BASS, new Note(Beats.ZERO, Beats.of(4), 40, 90));

  private final Playhead playhead = new Playhead();
  private final Queue<Command> commands = new ArrayDeque<>();
  private final List<SequencerEvent> moments = new ArrayList<>();
  private long now = 5_000_000_000L;
  private PortOutput output;

  private ClockDriver driver(FakePort port, PlaySetup setup) throws PortFailure {
    Port found = Ports.find("Test synth", Port.Direction.OUTPUT).port().orElseThrow();
    output = PortOutput.open(found, moments::add);
    ReadyLaps laps = new Rig(n -> HELD, setup).laps;
    Timeline timeline =
        new Timeline(laps, setup, new ClockSignals(setup.midiClock()), true, playhead);
    return new ClockDriver(
        new Playback(timeline, playhead, commands, () -> now, moments::add),
        (nanos, woken) -> {},
        output,
        20_000_000);
  }

  /** Turns whenever the driver wants to be turned, up to so many milliseconds from now. */
  private void play(ClockDriver driver, long millis) {
    long end = now + millis * 1_000_000;
    for (long next = driver.turn(); next <= end; next = driver.turn()) {
      now = Math.max(now, next);
    }
    now = end;
    driver.turn();
  }

  private static List<String> readable(List<MidiMessage> messages) {
    return messages.stream()
        .map(m -> (ShortMessage) m)
        .map(
            m ->
                switch (m.getStatus() & 0xF0) {
                  case 0x90 -> "on " + m.getData1();
                  case 0x80 -> "off " + m.getData1();
                  case 0xB0 -> "control " + m.getData1() + "=" + m.getData2();
                  case 0xC0 -> "program " + m.getData1();
                  default -> Integer.toHexString(m.getStatus());
                })
        .toList();
  }

  private static final PlaySetup QUIET = PlaySetup.USUAL.withoutMidiClock().withVolume(100);

  @Test
  void notes_leave_at_their_deadlines_and_the_playhead_knows_the_latency() throws Exception {
    try (FakePort port = FakePorts.output("Test synth")) {
      ClockDriver driver = driver(port, QUIET);
      commands.add(new Command.Play());
      long start = now + Timeline.LEAD;
      play(driver, 2061);
      assertThat(readable(port.received()))
          .containsExactly(
              "control 7=100",
              "control 10=64",
              "control 91=20",
              "program 33",
              "control 7=110",
              "control 10=64",
              "control 91=0",
              "program 0",
              "on 40",
              "off 40",
              "on 40");
      assertThat(playhead.at(start + 20_000_000).position()).hasToString("bar 1 beat 1");
      assertThat(playhead.at(start + 520_000_000).position()).hasToString("bar 1 beat 2");
      output.close();
    }
  }

  @Test
  void a_vanished_port_is_noticed_when_polled_and_set_up_again_when_it_returns() throws Exception {
    try (FakePort port = FakePorts.output("Test synth")) {
      ClockDriver driver = driver(port, QUIET);
      commands.add(new Command.Play());
      play(driver, 500);
      port.unplug();
      output.check();
      play(driver, 4000);
      int before = port.received().size();
      assertThat(moments).contains(new SequencerEvent.Lost("Test synth"));
      port.plug();
      output.check();
      play(driver, 1600);
      assertThat(moments).contains(new SequencerEvent.Found("Test synth"));
      assertThat(readable(port.received().subList(before, port.received().size())))
          .startsWith("control 64=0", "control 123=0")
          .containsSubsequence("control 7=100", "control 10=64", "program 33", "on 40")
          .endsWith("on 40");
      assertThat(playhead.at(now).position().bar()).isEqualTo(4);
      output.close();
    }
  }

  @Test
  void a_port_that_throws_is_lost_and_the_music_goes_on() throws Exception {
    try (FakePort port = FakePorts.output("Test synth")) {
      ClockDriver driver = driver(port, QUIET);
      commands.add(new Command.Play());
      play(driver, 500);
      port.startThrowing();
      play(driver, 6000);
      assertThat(moments.stream().filter(m -> m instanceof SequencerEvent.Lost)).hasSize(1);
      assertThat(moments)
          .anyMatch(m -> m instanceof SequencerEvent.BarLine line && line.bar() == 4);
      output.close();
    }
  }

  @Test
  void stop_and_close_leave_nothing_sounding_and_the_pedals_up() throws Exception {
    try (FakePort port = FakePorts.output("Test synth")) {
      ClockDriver driver = driver(port, QUIET);
      commands.add(new Command.Play());
      play(driver, 500);
      commands.add(new Command.Stop());
      play(driver, 1);
      assertThat(readable(port.received()))
          .containsSubsequence("on 40", "off 40", "control 64=0", "control 123=0")
          .endsWith("control 64=0", "control 123=0");
      driver.closeDevice();
      driver.closeDevice();
      long lifted = port.received().stream().filter(m -> m.getMessage()[1] == 123).count();
      assertThat(lifted).isEqualTo(2 + 16);
      assertThat(port.isOpen()).isFalse();
    }
  }

  @Test
  void channels_and_banks_may_be_chosen() throws Exception {
    try (FakePort port = FakePorts.output("Test synth")) {
      PlaySetup setup =
          QUIET
              .withChannels(Map.of(Role.BASS, 4, Role.CLICK, 5))
              .withBanks(Map.of(Role.BASS, 1 * 128 + 3));
      ClockDriver driver = driver(port, setup);
      commands.add(new Command.Play());
      play(driver, 100);
      assertThat(readable(port.received())).startsWith("control 0=1", "control 32=3");
      assertThat(port.received().stream().map(m -> m.getStatus() & 0x0F)).containsOnly(4, 5);
      output.close();
    }
  }
}

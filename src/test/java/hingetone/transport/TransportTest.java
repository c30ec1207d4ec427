package hingetone.transport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.port.FakePorts;
import hingetone.port.FakePorts.FakePort;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.Ports;
import hingetone.score.Note;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sequencer.Command;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.PlayingBand;
import hingetone.sequencer.SequencerEvent;
import hingetone.sequencer.Status;
import hingetone.sequencer.Wire;
import hingetone.sound.FakeSoundOutput;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.time.Beats;
import hingetone.time.Clock;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The whole thing with its threads; waits for what happens, never for a time. */
@Timeout(20)
class TransportTest {
  private static final Score FAST =
      PlayingBand.of(1, 400, Role.BASS, new Note(Beats.ZERO, Beats.of(4), 40, 90));

  private final BlockingQueue<SequencerEvent> moments = new LinkedBlockingQueue<>();

  private void await(Predicate<SequencerEvent> wanted) throws InterruptedException {
    while (!wanted.test(moments.take())) {
      // Something else happened: go on waiting.
    }
  }

  private void awaitBar(int bar) throws InterruptedException {
    await(m -> m instanceof SequencerEvent.BarLine line && line.bar() == bar);
  }

  private static Port port(String name) {
    return Ports.find(name, Port.Direction.OUTPUT).port().orElseThrow();
  }

  @Test
  void the_silent_clock_plays_lap_after_lap_and_obeys() throws Exception {
    try (Transport transport = Transport.onSilentClock(n -> FAST, PlaySetup.USUAL, moments::add)) {
      transport.send(new Command.Play());
      awaitBar(2);
      assertThat(transport.playhead().at(Clock.SYSTEM.nanos()).position().bar())
          .isGreaterThanOrEqualTo(2);
      transport.send(new Command.Pause());
      await(
          m ->
              m instanceof SequencerEvent.Changed c && c.status().motion() == Status.Motion.PAUSED);
      assertThat(transport.status().motion()).isEqualTo(Status.Motion.PAUSED);
    }
  }

  @Test
  void a_port_is_left_silent_by_close_from_another_thread() throws Exception {
    try (FakePort port = FakePorts.output("Closed synth")) {
      Transport transport =
          Transport.onPort(n -> FAST, PlaySetup.USUAL, port("Closed synth"), 0, moments::add);
      transport.send(new Command.Play());
      awaitBar(2);
      transport.close();
      transport.close();
      assertThat(port.received()).anyMatch(m -> m.getStatus() == 0x91);
      assertThat(Wire.left(port.received())).isEmpty();
      assertThat(port.isOpen()).isFalse();
    }
  }

  @Test
  void a_port_that_hangs_does_not_hang_close() throws Exception {
    try (FakePort port = FakePorts.output("Hanging synth")) {
      Transport transport =
          Transport.onPort(n -> FAST, PlaySetup.USUAL, port("Hanging synth"), 0, moments::add);
      transport.send(new Command.Play());
      awaitBar(1);
      port.getStuck();
      transport.close();
      assertThat(port.isOpen()).isTrue();
    }
  }

  @Test
  void a_missing_port_is_explained() {
    assertThatThrownBy(
            () ->
                Transport.onPort(
                    n -> FAST,
                    PlaySetup.USUAL,
                    new Port(1, "Gone", "", Port.Direction.OUTPUT),
                    0,
                    moments::add))
        .isInstanceOf(PortFailure.class)
        .hasMessageContaining("The MIDI output \"Gone\" cannot be opened (it is gone)");
  }

  @Test
  void sound_plays_and_closes_even_when_its_output_hangs() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.REAL_TIME)) {
      Synthesizer synthesizer = Synthesizer.open(44_100, SoundBank.builtIn());
      OutputLine line = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM);
      Transport transport =
          Transport.withSound(n -> FAST, PlaySetup.USUAL, synthesizer, line, moments::add);
      transport.send(new Command.Play());
      awaitBar(1);
      output.hang();
      while (!output.holdsWriter()) {
        Thread.onSpinWait();
      }
      transport.close();
      assertThat(output.captured()).isNotEmpty();
    }
  }

  @Test
  void while_the_sound_output_is_lost_the_music_goes_on_and_the_output_is_taken_back()
      throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.REAL_TIME)) {
      Synthesizer synthesizer = Synthesizer.open(44_100, SoundBank.builtIn());
      OutputLine line = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM);
      try (Transport transport =
          Transport.withSound(n -> FAST, PlaySetup.USUAL, synthesizer, line, moments::add)) {
        transport.send(new Command.Play());
        awaitBar(2);
        output.vanish();
        await(m -> m instanceof SequencerEvent.Lost);
        awaitBar(6);
        output.comeBack();
        await(m -> m instanceof SequencerEvent.Found);
        await(m -> m instanceof SequencerEvent.BarLine bar && bar.bar() > 6);
      }
      assertThat(output.opened()).isEqualTo(2);
    }
  }

  @Test
  void another_band_is_asked_for_its_laps_and_takes_over() throws Exception {
    Score other = PlayingBand.of(1, 400, Role.BASS, new Note(Beats.ZERO, Beats.ONE, 52, 90));
    try (FakePort port = FakePorts.output("Groovy synth");
        Transport transport =
            Transport.onPort(n -> FAST, PlaySetup.USUAL, port("Groovy synth"), 0, moments::add)) {
      transport.send(new Command.Play());
      awaitBar(2);
      transport.follow(n -> other);
      while (port.received().stream()
          .noneMatch(m -> m.getStatus() == 0x91 && m.getMessage()[1] == 52)) {
        Thread.onSpinWait();
      }
      assertThat(transport.status().motion()).isEqualTo(Status.Motion.PLAYING);
    }
  }

  @Test
  void a_lap_that_cannot_be_made_is_reported_and_the_last_one_played_again() throws Exception {
    LapSource broken =
        n -> {
          if (n > 1) {
            throw new IllegalStateException("no more ideas");
          }
          return FAST;
        };
    try (Transport transport = Transport.onSilentClock(broken, PlaySetup.USUAL, moments::add)) {
      transport.send(new Command.Play());
      await(
          m ->
              m.equals(
                  new SequencerEvent.Trouble(
                      "Lap 2 could not be made: java.lang.IllegalStateException: no more ideas")));
      awaitBar(3);
    }
  }
}

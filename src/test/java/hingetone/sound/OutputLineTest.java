package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import hingetone.sound.FakeSoundOutput.Pace;
import hingetone.time.Clock;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class OutputLineTest {
  private static final OutputLine.Settings TENTH_OF_A_SECOND =
      new OutputLine.Settings(Optional.empty(), 44_100, 100);
  private static final int BLOCK = 441;

  private final AtomicLong nanos = new AtomicLong();
  private final Clock clock = nanos::get;
  private final float[] block = new float[2 * BLOCK];

  @Test
  void without_an_output_the_failure_says_what_to_do_in_one_line() {
    assertThatThrownBy(() -> OutputLine.open(OutputLine.Settings.usual(), clock))
        .isInstanceOf(SoundFailure.class)
        .hasMessageStartingWith("No sound output was found: switch one on")
        .hasMessageContaining("--out")
        .message()
        .doesNotContain("\n");
    assertThat(OutputLine.devices()).isEmpty();
  }

  @Test
  void an_output_is_chosen_by_a_part_of_its_name() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE)) {
      assertThat(OutputLine.devices()).containsExactly(FakeSoundOutput.NAME);
      OutputLine.open(new OutputLine.Settings(Optional.of("TEST"), 44_100, 100), clock).close();
      assertThat(output.opened()).isEqualTo(1);
      assertThatThrownBy(
              () ->
                  OutputLine.open(
                      new OutputLine.Settings(Optional.of("kitchen"), 44_100, 100), clock))
          .hasMessage("No sound output is called 'kitchen'; hingetone ports lists them.");
    }
  }

  @Test
  void a_rate_that_the_output_refuses_is_not_taken_for_a_missing_output() {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE)) {
      assertThatThrownBy(
              () -> OutputLine.open(new OutputLine.Settings(Optional.empty(), 96_000, 100), clock))
          .hasMessage(
              "The sound output refuses 96000 frames a second with a buffer of 100 ms: leave"
                  + " --sample-rate and --buffer away.");
      assertThat(output.opened()).isZero();
    }
  }

  @Test
  void samples_are_rounded_to_the_nearest_step_and_held_at_full_scale() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE);
        OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock)) {
      float step = 1 / 32768f;
      float[] stereo = {0, step, -step, 0.49f * step, 0.51f * step, -0.51f * step, 1, -1, 7, -7};
      line.write(stereo, 5);
      float top = 32767 * step;
      assertThat(output.captured())
          .containsExactly(0, step, -step, 0, step, -step, top, -1, top, -1);
    }
  }

  @Test
  void the_frame_heard_follows_the_clock_between_what_the_device_says() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.STEPPED);
        OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock)) {
      for (int i = 0; i < 5; i++) {
        line.write(block, BLOCK);
      }
      assertThat(line.frameHeard(0)).isZero();
      assertThat(line.latencyMicros()).isEqualTo(50_000);
      for (int i = 0; i < 100; i++) {
        nanos.addAndGet(10_000_000);
        // The device answers 4 ms early and late in turn.
        output.play(BLOCK + (i % 2 == 0 ? 176 : -176));
        line.write(block, BLOCK);
      }
      assertThat(line.frameHeard(nanos.get())).isCloseTo(100L * BLOCK, within(100L));
      assertThat(line.frameHeard(nanos.get() + 5_000_000))
          .isCloseTo(line.frameHeard(nanos.get()) + 220, within(1L));
      assertThat(line.frameHeard(nanos.get() + 1_000_000_000)).isEqualTo(line.framesWritten());
    }
  }

  @Test
  void the_buffer_grows_once_when_it_runs_empty_and_underruns_are_counted() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.STEPPED);
        OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock)) {
      assertThat(line.bufferFrames()).isEqualTo(4410);
      fill(line, 10);
      assertThat(line.underruns()).isZero();

      playFor(output, 10);
      fill(line, 20);
      assertThat(line.underruns()).isEqualTo(1);
      assertThat(line.bufferFrames()).isEqualTo(8820);
      assertThat(line.frameHeard(nanos.get())).isEqualTo(10 * BLOCK);

      playFor(output, 20);
      fill(line, 1);
      assertThat(line.underruns()).isEqualTo(2);
      assertThat(line.bufferFrames()).isEqualTo(8820);
      assertThat(output.opened()).isEqualTo(2);
      assertThat(line.framesWritten()).isEqualTo(31 * BLOCK);
    }
  }

  @Test
  void a_program_that_was_stopped_and_woken_has_not_run_dry() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.STEPPED);
        OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock)) {
      fill(line, 10);
      playFor(output, 10);
      nanos.addAndGet(5_000_000_000L);
      fill(line, 10);
      assertThat(line.underruns()).isZero();
      assertThat(output.opened()).isEqualTo(1);
      assertThat(line.frameHeard(nanos.get())).isEqualTo(10 * BLOCK);

      playFor(output, 10);
      fill(line, 1);
      assertThat(line.underruns()).isEqualTo(1);
    }
  }

  @Test
  void what_a_sound_server_takes_in_advance_is_neither_heard_nor_missed() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.STEPPED);
        OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock)) {
      fill(line, 10);
      output.play(10 * BLOCK);
      nanos.addAndGet(20_000_000);
      fill(line, 10);

      assertThat(line.underruns()).isZero();
      assertThat(line.frameHeard(nanos.get())).isEqualTo(2 * BLOCK);
    }
  }

  @Test
  @Timeout(10)
  void a_writer_that_waits_returns_when_the_line_is_closed() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.STUCK)) {
      OutputLine line = OutputLine.open(TENTH_OF_A_SECOND, clock);
      fill(line, 10);
      Thread closing = new Thread(line::close);
      closing.start();
      while (line.write(block, BLOCK)) {
        Thread.onSpinWait();
      }
      closing.join();
      assertThat(line.write(block, BLOCK)).isFalse();
      assertThat(output.captured()).hasSizeLessThanOrEqualTo(2 * 10 * BLOCK);
    }
  }

  /** Blocks are a hundredth of a second long. */
  @Test
  void a_driver_that_throws_is_a_lost_line_until_it_takes_sound_again() throws Exception {
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(Pace.FREE);
        OutputLine line = OutputLine.open(OutputLine.Settings.usual(), System::nanoTime)) {
      assertThat(line.write(new float[20], 10)).isTrue();
      output.startThrowing();
      assertThat(line.write(new float[20], 10)).isFalse();
      assertThat(line.reopen()).isFalse();
      output.comeBack();
      assertThat(line.write(new float[20], 10)).isFalse();
      assertThat(line.reopen()).isTrue();
      assertThat(line.write(new float[20], 10)).isTrue();
    }
  }

  private void playFor(FakeSoundOutput output, int blocks) {
    output.play(blocks * BLOCK);
    nanos.addAndGet(blocks * 10_000_000L);
  }

  private void fill(OutputLine line, int blocks) {
    for (int i = 0; i < blocks; i++) {
      assertThat(line.write(block, BLOCK)).isTrue();
    }
  }
}

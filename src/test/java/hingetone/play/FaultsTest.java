package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowable;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.groove.Grooves;
import hingetone.journal.PracticeLog;
import hingetone.midi.Received;
import hingetone.output.CommandFailure;
import hingetone.output.ExitStatus;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sound.FakeSoundOutput;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.Synthesizer;
import hingetone.take.TakeFiles;
import hingetone.text.reading.Source;
import hingetone.time.Clock;
import hingetone.transport.Transport;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jline.terminal.Attributes;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.LineDisciplineTerminal;
import org.jline.utils.NonBlockingReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Something throws on each thread there is while playing, and what the player sees of it: a line,
 * and the band goes on; or the end, with a line and status 1.
 */
@Timeout(60)
class FaultsTest {
  private static final String CHART =
      """
      title: Weak floor
      tempo: 400
      meter: 1/4
      count-in: 0
      sections:
        low: {key: G minor, bars: '| Gm7 |'}
        high: {key: Bb minor, bars: '| Bbm7 |'}
      """;

  private static final PlaySetup FOUR_LAPS = PlaySetup.USUAL.withLaps(4).withEnding(1);

  @TempDir Path folder;

  private final Chart chart = ChartReader.read(new Source("", CHART)).value().orElseThrow();
  private final Backing backing = Backing.of(chart, Grooves.builtIn());
  private final StringBuilder read = new StringBuilder();

  // What a test puts in the place of a part that works.
  private LapSource laps = lap -> backing.lapOf(lap, 4);
  private Supplier<Optional<Arrangement.Music>> nextGroove = Optional::empty;
  private Consumer<SequencerEvent> hearing = moment -> {};
  private Consumer<String> reader = line -> {};
  private Optional<Received> press = Optional.empty();
  private Runnable listening = () -> {};
  private Performance.Output output =
      (source, listener, say) ->
          Transport.onSilentClock(
              source,
              FOUR_LAPS,
              moment -> {
                hearing.accept(moment);
                listener.accept(moment);
              });

  private Performance performance() {
    try {
      Files.writeString(folder.resolve("screen"), "pedal cc 81: groove\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Arrangement.Music music =
        new Arrangement.Music("plain", (shown, from, position) -> laps, nextGroove);
    return new Performance(
        Arrangement.of(
            chart, false, "plain", CompletableFuture.completedFuture(music), Optional.empty()),
        Optional.empty(),
        output,
        new Performance.Player(
            (player, events) -> {
              press.ifPresent(player);
              listening.run();
              return () -> {};
            },
            new KeptSettings(folder),
            new Performance.Takes(
                new TakeFiles(folder.resolve("takes")),
                "",
                0,
                Optional.empty(),
                new PracticeLog(folder.resolve("log")))),
        Optional.empty());
  }

  /** Plays in lines of text to the end. */
  private void play() {
    play(false);
  }

  private void play(boolean readsKeys) {
    PrintWriter lines =
        new PrintWriter(OutputStream.nullOutputStream()) {
          @Override
          public void println(String line) {
            read.append(line).append('\n');
            reader.accept(line);
          }
        };
    performance().inLines(lines, readsKeys);
  }

  private static RuntimeException outOfTune() {
    return new IllegalStateException("out of tune");
  }

  /** The end that a player sees where nobody foresaw what was thrown. */
  private static void assertFault(ThrowingCallable playing) {
    CommandFailure failure = CommandFailure.of(catchThrowable(playing));
    assertThat(failure.status()).isEqualTo(ExitStatus.FAILED);
    assertThat(failure)
        .hasMessage(
            "hingetone met a fault of its own: java.lang.IllegalStateException: out of tune\n"
                + "Please report it with the output of the same command and --debug.");
  }

  private static void throwAt(SequencerEvent moment, int bar) {
    if (moment instanceof SequencerEvent.BarLine line && line.bar() == bar) {
      throw outOfTune();
    }
  }

  @Test
  void the_sequencer_on_a_clock_ends_it() {
    hearing = moment -> throwAt(moment, 5);
    assertFault(this::play);
    assertThat(read).contains("Lap 2 of 4").doesNotContain("Lap 4 of 4");
  }

  @Test
  void the_sequencer_on_a_sound_output_ends_it() {
    output = (source, listener, say) -> withSound(source, moment -> throwAt(moment, 2));
    try (FakeSoundOutput there = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.REAL_TIME)) {
      assertFault(this::play);
      assertThat(there.captured()).isNotEmpty();
    }
  }

  private static Transport withSound(LapSource laps, Consumer<SequencerEvent> listener) {
    try {
      Synthesizer synthesizer = Synthesizer.open(44_100, SoundBank.builtIn());
      OutputLine line = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM);
      return Transport.withSound(laps, FOUR_LAPS, synthesizer, line, listener);
    } catch (SoundFailure e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void a_lap_that_cannot_be_made_is_a_line_and_the_band_plays_on_to_its_end() {
    laps =
        lap -> {
          if (lap == 2) {
            throw outOfTune();
          }
          return backing.lapOf(lap, 4);
        };
    play();
    assertThat(read)
        .contains("Lap 2 could not be made: java.lang.IllegalStateException: out of tune\n")
        .contains("Lap 2 of 4", "Lap 4 of 4", "Ending");
  }

  @Test
  void a_worker_that_makes_no_laps_any_more_ends_it() {
    laps =
        lap -> {
          if (lap == 3) {
            throw new StackOverflowError("turtles");
          }
          return backing.lapOf(lap, 4);
        };
    CommandFailure failure = CommandFailure.of(catchThrowable(this::play));
    assertThat(failure.status()).isEqualTo(ExitStatus.FAILED);
    assertThat(failure).hasMessageContaining("java.lang.StackOverflowError: turtles");
  }

  @Test
  void an_output_that_cannot_be_opened_ends_it() {
    output =
        (source, listener, say) -> {
          throw outOfTune();
        };
    assertFault(this::play);
  }

  @Test
  void pedals_that_cannot_be_opened_end_it() {
    listening =
        () -> {
          throw outOfTune();
        };
    assertFault(this::play);
  }

  @Test
  void a_groove_that_fails_is_a_line_and_the_band_stays_as_it_was() {
    nextGroove =
        () -> {
          throw outOfTune();
        };
    press = Optional.of(new Received(0, 0xB0, 0, 81, 127));
    play();
    assertThat(read)
        .contains(
            "hingetone met a fault of its own: java.lang.IllegalStateException: out of tune\n")
        .contains("Lap 4 of 4", "Ending")
        .doesNotContain("Groove: ");
  }

  @Test
  void a_groove_whose_laps_fail_is_a_line_and_the_band_stays_as_it_was() {
    LapSource none =
        lap -> {
          throw outOfTune();
        };
    nextGroove =
        () -> Optional.of(new Arrangement.Music("odd", (s, f, p) -> none, Optional::empty));
    press = Optional.of(new Received(0, 0xB0, 0, 81, 127));
    play();
    assertThat(read).contains("out of tune\n", "Ending").doesNotContain("Groove: ");
  }

  @Test
  void the_ears_that_wait_for_each_beat_end_it() {
    output =
        (source, listener, say) -> {
          listener.accept(new SequencerEvent.Beat(0, null));
          return Transport.onSilentClock(source, PlaySetup.USUAL, listener);
        };
    CommandFailure failure = CommandFailure.of(catchThrowable(this::play));
    assertThat(failure.status()).isEqualTo(ExitStatus.FAILED);
    assertThat(failure).hasMessageContaining("java.lang.NullPointerException");
  }

  @Test
  void the_view_ends_it() {
    reader =
        line -> {
          if (line.startsWith("Lap 2")) {
            throw outOfTune();
          }
        };
    assertFault(this::play);
  }

  @Test
  void a_thread_that_is_not_ours_ends_it() {
    listening =
        () ->
            new Thread(
                    () -> {
                      throw outOfTune();
                    })
                .start();
    assertFault(this::play);
  }

  @Test
  void a_typist_who_cannot_be_read_ends_it() {
    InputStream before = System.in;
    System.setIn(
        new InputStream() {
          @Override
          public int read() {
            throw outOfTune();
          }
        });
    try {
      assertFault(() -> play(true));
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void of_several_faults_the_first_is_told() {
    hearing =
        moment -> {
          throwAt(moment, 2);
          new Thread(() -> throwAt(moment, 3)).start();
        };
    assertFault(this::play);
  }

  @Test
  void after_the_end_other_threads_are_nobodys_business() {
    Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
    hearing = moment -> throwAt(moment, 2);
    assertFault(this::play);
    assertThat(Thread.getDefaultUncaughtExceptionHandler()).isSameAs(before);
  }

  @Test
  void keys_that_cannot_be_read_end_it_and_the_terminal_is_given_back() throws IOException {
    ByteArrayOutputStream shown = new ByteArrayOutputStream();
    List<String> modes = new ArrayList<>();
    Terminal terminal =
        new WatchedTerminal(shown, modes) {
          @Override
          public NonBlockingReader reader() {
            throw outOfTune();
          }
        };
    modes.add(terminal.getAttributes().toString());
    assertFault(() -> playOn(terminal));
    assertThat(modes).hasSizeGreaterThan(2).endsWith(modes.get(0));
    assertThat(shown.toString(StandardCharsets.UTF_8)).contains("\033[?25h\033[?1049l");
  }

  @Test
  void a_terminal_that_takes_no_picture_ends_it_and_is_given_back() throws IOException {
    List<String> modes = new ArrayList<>();
    OutputStream ink =
        new OutputStream() {
          private int left = 20_000;

          @Override
          public void write(int oneByte) throws IOException {
            if (left-- < 0) {
              throw new IOException("out of ink");
            }
          }
        };
    Terminal terminal =
        new WatchedTerminal(OutputStream.nullOutputStream(), modes) {
          @Override
          public OutputStream output() {
            return ink;
          }
        };
    modes.add(terminal.getAttributes().toString());
    CommandFailure failure = CommandFailure.of(catchThrowable(() -> playOn(terminal)));
    assertThat(failure.status()).isEqualTo(ExitStatus.FAILED);
    assertThat(failure).hasMessage("The terminal cannot be written to: out of ink");
    assertThat(modes).hasSizeGreaterThan(2).endsWith(modes.get(0));
  }

  private void playOn(Terminal terminal) throws IOException {
    TerminalLook look = new TerminalLook(TerminalLook.Depth.MANY, false);
    try (TerminalScreen screen = TerminalScreen.on(terminal, look, () -> {})) {
      performance().on(screen, look);
    }
  }

  /** A terminal of 100 columns that tells which modes it was given. */
  private static class WatchedTerminal extends LineDisciplineTerminal {
    private final List<String> modes;

    WatchedTerminal(OutputStream shown, List<String> modes) throws IOException {
      super("test", "xterm-256color", shown, StandardCharsets.UTF_8);
      this.modes = modes;
      setSize(Size.of(100, 30));
    }

    @Override
    public void setAttributes(Attributes attributes) {
      modes.add(attributes.toString());
      super.setAttributes(attributes);
    }
  }

  @Test
  void without_a_fault_nothing_is_thrown() {
    assertThatCode(this::play).doesNotThrowAnyException();
    assertThat(read).contains("Ending");
  }
}

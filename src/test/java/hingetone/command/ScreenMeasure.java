package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.groove.Grooves;
import hingetone.journal.PracticeLog;
import hingetone.play.Arrangement;
import hingetone.play.KeptSettings;
import hingetone.play.Performance;
import hingetone.score.Mark;
import hingetone.score.Note;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.score.Sound;
import hingetone.screen.picture.TerminalLook;
import hingetone.screen.picture.TerminalLook.Depth;
import hingetone.screen.terminal.TerminalScreen;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sound.FakeSoundOutput;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.Synthesizer;
import hingetone.take.TakeFiles;
import hingetone.time.Beats;
import hingetone.time.Clock;
import hingetone.time.Tempo;
import hingetone.transport.Transport;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;
import org.jline.utils.ScreenTerminal;
import org.jline.utils.ScreenTerminal.VirtualTerminal;

/**
 * The beat seen against the beat heard, and what playing costs, by hand: {@code ScreenMeasure
 * CHART.yaml [SECONDS]}.
 *
 * <p>Everything is real but the two ends: a sound output that plays in real time and keeps what it
 * played, and a terminal that keeps when which bytes were written to it. First a dry stroke on each
 * beat is played: a beat is heard when the output plays the first sample of its stroke, and seen
 * when the bytes that change the count in the first row have been written. Then the chart's own
 * band plays, for the costs.
 */
final class ScreenMeasure {
  private static final int RATE = 44_100;
  private static final int ROWS = 30;
  private static final int COLUMNS = 100;
  private static final int SIDE_STICK = 37;

  /** The built-in side stick fades in over three frames, which are silent when rounded. */
  private static final int FADE_IN = 3;

  private static final Pattern PLACE = Pattern.compile("bar (\\d+) .*?beat (\\d+)");

  private ScreenMeasure() {}

  /** Bytes written to the terminal, and when the last of them was written. */
  private record Written(long nanos, byte[] bytes) {}

  private static final class Record extends OutputStream {
    private final List<Written> written = new ArrayList<>();
    private final ByteArrayOutputStream waiting = new ByteArrayOutputStream();

    @Override
    public synchronized void write(int b) {
      waiting.write(b);
    }

    @Override
    public synchronized void write(byte[] bytes, int offset, int length) {
      waiting.write(bytes, offset, length);
    }

    @Override
    public synchronized void flush() {
      if (waiting.size() > 0) {
        written.add(new Written(System.nanoTime(), waiting.toByteArray()));
        waiting.reset();
      }
    }

    synchronized List<Written> taken() {
      return List.copyOf(written);
    }
  }

  public static void main(String[] args) throws Exception {
    Locale.setDefault(Locale.ROOT);
    int seconds = args.length > 1 ? Integer.parseInt(args[1]) : 60;
    Chart chart =
        ChartReader.readFile(args[0]).value().orElseThrow().withCountIn(0).withTempo(Tempo.of(120));
    Backing backing = Backing.of(chart, Grooves.builtIn());
    System.out.printf("Java %s, %s%n", Runtime.version(), chart.title());
    play(chart, lap -> strokes(Form.of(chart)), seconds, true);
    play(chart, backing::lap, seconds, false);
    System.exit(0);
  }

  private static void play(Chart chart, LapSource laps, int seconds, boolean compares)
      throws Exception {
    Record record = new Record();
    PipedOutputStream keys = new PipedOutputStream();
    try (FakeSoundOutput output = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.REAL_TIME);
        PipedInputStream in = new PipedInputStream(keys);
        Terminal terminal =
            new ExternalTerminal(
                "measured", "xterm-256color", in, record, StandardCharsets.UTF_8)) {
      terminal.setSize(org.jline.terminal.Size.of(COLUMNS, ROWS));
      List<SequencerEvent.Underrun> dry = new ArrayList<>();
      Performance performance = performance(chart, laps, dry);
      TerminalLook look = new TerminalLook(Depth.MANY, false);
      Thread playing = new Thread(() -> show(performance, terminal, look));
      playing.start();
      Thread.sleep(3000);
      Costs before = Costs.now();
      int from = record.taken().size();
      Thread.sleep(seconds * 1000L);
      Costs after = Costs.now();
      List<Written> written = record.taken();
      keys.write('q');
      keys.flush();
      playing.join(5000);
      if (compares) {
        compare(output, written, dry.size());
      } else {
        long bytes =
            written.subList(from, written.size()).stream().mapToInt(w -> w.bytes.length).sum();
        after.tell(before, bytes, seconds);
      }
    }
  }

  private static void show(Performance performance, Terminal terminal, TerminalLook look) {
    try (TerminalScreen screen = TerminalScreen.on(terminal, look, () -> {})) {
      performance.on(screen, look);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Performance performance(
      Chart chart, LapSource laps, List<SequencerEvent.Underrun> dry) {
    Arrangement.Music music =
        new Arrangement.Music("", (shown, from, position) -> laps, Optional::empty);
    return new Performance(
        Arrangement.of(
            chart, false, "measured", CompletableFuture.completedFuture(music), Optional.empty()),
        Optional.empty(),
        (source, listener, say) -> {
          try {
            return Transport.withSound(
                source,
                PlaySetup.USUAL,
                Synthesizer.open(RATE, SoundBank.builtIn()),
                OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM),
                moment -> {
                  if (moment instanceof SequencerEvent.Underrun u) {
                    dry.add(u);
                  }
                  listener.accept(moment);
                });
          } catch (Exception e) {
            throw new IllegalStateException(e);
          }
        },
        new Performance.Player(
            (player, events) -> () -> {},
            new KeptSettings(Path.of("/nowhere")),
            new Performance.Takes(
                new TakeFiles(Path.of("/nowhere").resolve("takes")),
                "",
                0,
                Optional.empty(),
                new PracticeLog(Path.of("/nowhere").resolve("log")))),
        Optional.empty());
  }

  private static Score strokes(Form form) {
    List<Note> notes = new ArrayList<>();
    for (Form.Bar bar : form.bars()) {
      for (Beats beat : bar.meter().beats()) {
        Beats at = bar.start().plus(bar.meter().toQuarters(beat.minus(Beats.ONE)));
        notes.add(new Note(at, Beats.of(1, 4), SIDE_STICK, 100));
      }
    }
    return new Score(
        "Strokes",
        Beats.ZERO,
        form.length(),
        List.of(
            new Mark.OfMeter(Beats.ZERO, form.bar(1).meter()),
            new Mark.OfTempo(Beats.ZERO, form.bar(1).section().tempo())),
        List.of(new Part(Role.DRUMS, new Sound(0, 100, 64, 0), notes)));
  }

  /** Prints how much later than they are heard the beats are seen. */
  private static void compare(FakeSoundOutput output, List<Written> written, int dry)
      throws IOException {
    List<Long> heard = heard(output);
    List<Long> seen = seen(written);
    int count = Math.min(heard.size(), seen.size());
    double[] late = new double[count - 1];
    for (int i = 1; i < count; i++) {
      // The very first beat is on the screen before the music begins.
      late[i - 1] = (seen.get(i) - heard.get(i)) / 1e6;
    }
    double mean = Arrays.stream(late).average().orElseThrow();
    Arrays.sort(late);
    System.out.printf(
        "beats seen after heard: %d beats, mean %.1f ms, earliest %.1f, median %.1f, 99%% %.1f,"
            + " latest %.1f; the sound ran dry %d times%n",
        late.length,
        mean,
        late[0],
        late[late.length / 2],
        late[late.length * 99 / 100],
        late[late.length - 1],
        dry);
  }

  /** When the output played the first sample after at least 100 ms of silence. */
  private static List<Long> heard(FakeSoundOutput output) {
    float[] stereo = output.captured();
    List<Long> heard = new ArrayList<>();
    int silent = RATE;
    for (int frame = 0; frame < stereo.length / 2; frame++) {
      boolean sounds = stereo[2 * frame] != 0 || stereo[2 * frame + 1] != 0;
      if (sounds && silent > RATE / 10) {
        heard.add(output.playedAt(frame - FADE_IN));
      }
      silent = sounds ? 0 : silent + 1;
    }
    return heard;
  }

  /** When each new count stood in the first row. */
  private static List<Long> seen(List<Written> written) throws IOException {
    List<Long> seen = new ArrayList<>();
    String place = "";
    VirtualTerminal shown = ScreenTerminal.withTerminal("shown", "xterm-256color", COLUMNS, ROWS);
    for (Written w : written) {
      shown.terminal().output().write(w.bytes);
      shown.terminal().output().flush();
      Matcher matcher = PLACE.matcher(shown.screen().toString());
      String now = matcher.find() ? matcher.group(1) + "/" + matcher.group(2) : place;
      if (!now.equals(place)) {
        seen.add(w.nanos);
        place = now;
      }
    }
    return seen;
  }

  /**
   * What the program has used.
   *
   * @param cpuNanos of all threads
   * @param residentKilobytes in memory, as the system counts it; −1 where it does not say
   */
  private record Costs(long cpuNanos, long residentKilobytes) {
    static Costs now() throws IOException {
      long cpu = ProcessHandle.current().info().totalCpuDuration().orElseThrow().toNanos();
      Path status = Path.of("/proc/self/status");
      long resident =
          Files.exists(status)
              ? Files.readAllLines(status).stream()
                  .filter(line -> line.startsWith("VmRSS:"))
                  .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
                  .findFirst()
                  .orElse(-1)
              : -1;
      return new Costs(cpu, resident);
    }

    void tell(Costs before, long bytes, int seconds) {
      System.out.printf(
          "band at 120 bpm: %.0f bytes a second to the terminal, %.1f %% of one core, %d MB in"
              + " memory%n",
          bytes / (double) seconds,
          (cpuNanos - before.cpuNanos) / 1e7 / seconds,
          residentKilobytes / 1024);
    }
  }
}

package hingetone.command;

import hingetone.hearing.live.DelayFinder.Delay;
import hingetone.hearing.live.InputState;
import hingetone.hearing.signal.Resampler;
import hingetone.neck.Tuning;
import hingetone.output.CommandFailure;
import hingetone.play.DelayMeasure;
import hingetone.sound.InputLine;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundFailure;
import hingetone.theory.Key;
import hingetone.theory.Pitch;
import hingetone.time.Clock;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a sound input hears, and measures its delay. */
@Command(
    name = "listen",
    description = {
      "Say what a sound input hears: its level, the note and how far it is off.",
      "For setting the level and tuning the open strings; ctrl c ends it. With --delay it plays",
      "clicks instead and measures how much later they come in than they are heard: for that let",
      "the input hear the output, by a cable or the microphone. Turn headphones down before."
    })
final class ListenCommand implements Runnable {
  private static final int BLOCKS_A_LINE = 22; // a quarter of a second
  private static final int BAR = 20;
  private static final double LOWEST_DB = -60;

  /** A note further from every string than this is none of them, open. */
  private static final double NEAR_STRING = 1.5;

  /** Without a chart notes are spelled as in C. */
  private static final Key C = Key.parse("C major").orElseThrow();

  @Spec CommandSpec spec;

  @Parameters(
      paramLabel = "INPUT",
      arity = "0..1",
      description = "A part of its name; unless stated the system's own choice.")
  Optional<String> input = Optional.empty();

  @Option(
      names = "--input-channel",
      paramLabel = "N",
      converter = InstrumentOption.ToInputChannel.class,
      description = "Which of its channels, from 1 (${DEFAULT-VALUE}).",
      defaultValue = "1")
  int channel;

  @Option(
      names = "--tuning",
      paramLabel = "TUNING",
      converter = ChartArguments.ToTuning.class,
      description = "A name, or the open strings from low to high (standard unless stated).")
  Tuning tuning = Tuning.STANDARD;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      converter = ToSeconds.class,
      description = "End after so many seconds.")
  Optional<Integer> seconds = Optional.empty();

  @Option(names = "--delay", description = "Measure the delay out and back, with clicks.")
  boolean delay;

  @Override
  public void run() {
    InputLine.Settings settings = new InputLine.Settings(input, channel);
    try (InputLine line = InputLine.open(settings, Clock.SYSTEM)) {
      if (delay) {
        measure(line);
      } else {
        listen(line);
      }
    } catch (SoundFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  private void measure(InputLine line) throws SoundFailure {
    say("Nine clicks, softly. The input must hear the output.");
    Optional<Delay> found;
    try (OutputLine out = OutputLine.open(OutputLine.Settings.usual(), Clock.SYSTEM)) {
      found = DelayMeasure.of(out, line);
    }
    if (found.isEmpty()) {
      throw CommandFailure.couldNot(
          "The clicks did not come in: connect the output to the input, or hold the microphone to"
              + " the loudspeaker, and turn it up a little.");
    }
    long millis = Math.round(found.get().millis());
    say(
        String.format(
            Locale.ROOT,
            "They come in %d ms after they are heard (half of them within %.1f ms).",
            millis,
            found.get().spread()));
    say(
        "Use it as play --hear INPUT --delay="
            + millis
            + "; it holds for these devices and buffers, measure again after a change.");
  }

  private void listen(InputLine line) {
    Resampler resampler = new Resampler(line.sampleRate());
    InputState.Meter meter = new InputState.Meter();
    long blocks = seconds.map(s -> (long) s * line.sampleRate() / InputLine.BLOCK).orElse(-1L);
    String before = "";
    for (long block = 1; block != blocks + 1; block++) {
      Optional<float[]> samples = line.read();
      if (samples.isEmpty()) {
        throw CommandFailure.couldNot("The sound input is gone.");
      }
      meter.take(resampler.next(samples.get()));
      if (block % BLOCKS_A_LINE == 0) {
        String now = words(meter.now());
        if (!now.equals(before)) {
          say(now);
        }
        before = now;
      }
    }
  }

  private String words(InputState state) {
    if (state.decibels() < LOWEST_DB) {
      return "silence";
    }
    int filled = (int) Math.round(BAR * (1 - state.decibels() / LOWEST_DB));
    String bar = "#".repeat(Math.max(0, Math.min(BAR, filled)));
    List<String> parts = new ArrayList<>();
    parts.add(String.format(Locale.ROOT, "%-" + BAR + "s %4.0f dB", bar, state.decibels()));
    if (state.clips()) {
      parts.add("too loud: turn the input down");
    }
    if (state.hums()) {
      parts.add("hum of the mains: check cable and earth");
    } else {
      state.midi().map(this::note).ifPresent(parts::add);
    }
    return String.join("  ", parts);
  }

  /** {@code A2 +6 cents, string 5}. */
  private String note(double midi) {
    int nearest = (int) Math.round(midi);
    long cents = Math.round(100 * (midi - nearest));
    Pitch pitch = C.spell(nearest);
    String string =
        strings().stream()
            .min(Comparator.comparingDouble(s -> Math.abs(s[1] - midi)))
            .filter(s -> Math.abs(s[1] - midi) < NEAR_STRING)
            .map(s -> ", string " + s[0] + tuned(midi - s[1]))
            .orElse("");
    return String.format(Locale.ROOT, "%s %+d cents%s", pitch, cents, string);
  }

  private static String tuned(double away) {
    long cents = Math.round(100 * away);
    return Math.abs(cents) <= 3 ? " in tune" : cents < 0 ? " too low" : " too high";
  }

  private List<int[]> strings() {
    List<int[]> strings = new ArrayList<>();
    List<Pitch> open = tuning.strings();
    for (int i = 0; i < open.size(); i++) {
      strings.add(new int[] {open.size() - i, open.get(i).midi()});
    }
    return strings;
  }

  private void say(String words) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(words);
    out.flush();
  }

  /** Reads how long it lasts. */
  static final class ToSeconds extends WholeNumber {
    ToSeconds() {
      super(1, 3600, "seconds");
    }
  }
}

package hingetone.command;

import hingetone.sound.OutputLine;
import hingetone.sound.SoundFailure;
import hingetone.sound.Synthesizer;
import hingetone.time.Clock;
import hingetone.transport.LapSource;
import hingetone.transport.Moment;
import hingetone.transport.Port;
import hingetone.transport.PortFailure;
import hingetone.transport.Ports;
import hingetone.transport.Setup;
import hingetone.transport.Transport;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** Where the music goes: a MIDI port, or the synthesizer on a sound output. */
final class OutputOptions {
  private static final int SAMPLE_RATE = 44_100;

  @Option(
      names = "--out",
      paramLabel = "PORT",
      description = "Play on a MIDI port: its number, or a part of its name.")
  Optional<String> port = Optional.empty();

  @Option(
      names = "--soundfont",
      paramLabel = "FILE.sf2",
      description = "The sounds to play with; without it one found on this system, or Java's own.")
  Optional<Path> soundFont = Optional.empty();

  @Option(
      names = "--sound-output",
      paramLabel = "NAME",
      description = "The sound output to use: a part of its name.")
  Optional<String> soundOutput = Optional.empty();

  @Option(
      names = "--buffer",
      paramLabel = "MS",
      converter = ToBuffer.class,
      description = "What the sound output holds, 10 to 2000 ms (${DEFAULT-VALUE}).",
      defaultValue = "" + OutputLine.USUAL_BUFFER_MILLIS)
  int bufferMillis;

  @Option(
      names = "--volume",
      paramLabel = "0..100",
      converter = ToVolume.class,
      description = "The level to begin with (${DEFAULT-VALUE}): start low, then come up.",
      defaultValue = "60")
  int volume;

  /**
   * Opens the output and a transport that plays on it. Without any sound output it plays in silence
   * and says so.
   *
   * @param say takes one line for the player
   * @throws CommandFailure when what was asked for by name is not there
   */
  Transport open(LapSource laps, Setup setup, Consumer<Moment> listener, Consumer<String> say) {
    Setup here = setup.withVolume(volume);
    return port.map(wanted -> onPort(find(wanted), laps, here, listener))
        .orElseGet(() -> withSound(laps, here, listener, say));
  }

  /**
   * Looks whether the port asked for is there, before anything is shown.
   *
   * @throws CommandFailure when it is not
   */
  void check() {
    port.ifPresent(OutputOptions::find);
  }

  private static Port find(String wanted) {
    Ports.Search search = Ports.find(wanted, Port.Direction.OUTPUT);
    return search.port().orElseThrow(() -> CommandFailure.wrongInput(search.problem()));
  }

  private static Transport onPort(
      Port found, LapSource laps, Setup setup, Consumer<Moment> listener) {
    try {
      return Transport.onPort(laps, setup, found, 0, listener);
    } catch (PortFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  private Transport withSound(
      LapSource laps, Setup setup, Consumer<Moment> listener, Consumer<String> say) {
    try {
      OutputLine line =
          OutputLine.open(
              new OutputLine.Settings(soundOutput, SAMPLE_RATE, bufferMillis), Clock.SYSTEM);
      Synthesizer synthesizer = Synthesizer.open(SAMPLE_RATE, soundFont);
      return Transport.withSound(laps, setup, synthesizer, line, listener);
    } catch (SoundFailure e) {
      if (soundFont.isPresent() || soundOutput.isPresent()) {
        throw CommandFailure.couldNot(e.getMessage());
      }
      say.accept(e.getMessage());
      return Transport.onSilentClock(laps, setup, listener);
    }
  }

  /** Reads a buffer length. */
  static final class ToBuffer implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) {
      return ChartArguments.wholeNumber(text, 10, 2000, "milliseconds");
    }
  }

  /** Reads a volume. */
  static final class ToVolume implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String text) {
      return ChartArguments.wholeNumber(text, 0, 100, "a level");
    }
  }
}

package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.Ports;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sequencer.LapSource;
import hingetone.sequencer.PlaySetup;
import hingetone.sequencer.SequencerEvent;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.sound.SoundFailure;
import hingetone.sound.Synthesizer;
import hingetone.time.Clock;
import hingetone.transport.Transport;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Where the music goes: a MIDI port, or the synthesizer on a sound output. */
final class OutputOptions {
  @Option(
      names = "--out",
      paramLabel = "PORT",
      description = "Play on a MIDI port: its number, or a part of its name.")
  Optional<String> port = Optional.empty();

  @Option(
      names = "--channels",
      paramLabel = "PART=N",
      split = ",",
      converter = {ToPart.class, ToChannel.class},
      description = "Channels on a MIDI port other than the usual ones: bass=5,chords=6.")
  Map<Role, Integer> channels = Map.of();

  @Option(
      names = "--banks",
      paramLabel = "PART=N",
      split = ",",
      converter = {ToPart.class, ToBank.class},
      description = "Banks to select on a MIDI port, 0 to 16383: bass=128.")
  Map<Role, Integer> banks = Map.of();

  @Option(
      names = "--latency",
      paramLabel = "MS",
      converter = ToLatency.class,
      description = "How much later than it is told the gear at the port sounds, 0 to 1000 ms.",
      defaultValue = "0")
  int latencyMillis;

  @Mixin SoundFontOption soundFont;

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
      names = "--sample-rate",
      paramLabel = "HZ",
      converter = ToSampleRate.class,
      description = "Frames a second of the sound output, 22050 to 96000 (${DEFAULT-VALUE}).",
      defaultValue = "44100")
  int sampleRate;

  @Option(
      names = "--volume",
      paramLabel = "0..100",
      converter = ToVolume.class,
      description = "The level to begin with (${DEFAULT-VALUE}): start low, then come up.",
      defaultValue = "" + PlaySetup.MODERATE_VOLUME)
  int volume;

  /**
   * Opens the output and a transport that plays on it. Without any sound output it plays in silence
   * and says so.
   *
   * @param say takes one line for the player
   * @throws CommandFailure when what was asked for by name is not there
   */
  Transport open(
      LapSource laps, PlaySetup setup, Consumer<SequencerEvent> listener, Consumer<String> say) {
    PlaySetup here = setup.withVolume(volume);
    return port.map(wanted -> onPort(find(wanted), laps, here, listener))
        .orElseGet(() -> withSound(laps, here, listener, say));
  }

  /**
   * Looks whether the port and the sound font asked for are there, before anything is shown.
   *
   * @throws CommandFailure when they are not
   */
  void check() {
    port.ifPresent(OutputOptions::find);
    soundFont.check();
  }

  /** People count channels from 1, messages from 0. */
  private Map<Role, Integer> channelsFromZero() {
    Map<Role, Integer> fromZero = new EnumMap<>(Role.class);
    channels.forEach((part, channel) -> fromZero.put(part, channel - 1));
    return fromZero;
  }

  private static Port find(String wanted) {
    Ports.Search search = Ports.find(wanted, Port.Direction.OUTPUT);
    return search.port().orElseThrow(() -> CommandFailure.wrongInput(search.problem()));
  }

  private Transport onPort(
      Port found, LapSource laps, PlaySetup setup, Consumer<SequencerEvent> listener) {
    PlaySetup routed = setup.withChannels(channelsFromZero()).withBanks(banks);
    try {
      return Transport.onPort(laps, routed, found, latencyMillis, listener);
    } catch (PortFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
  }

  private Transport withSound(
      LapSource laps, PlaySetup setup, Consumer<SequencerEvent> listener, Consumer<String> say) {
    Score first = laps.lap(1);
    SoundBank bank = soundFont.bankFor(first);
    try {
      OutputLine line =
          OutputLine.open(
              new OutputLine.Settings(soundOutput, sampleRate, bufferMillis), Clock.SYSTEM);
      Synthesizer synthesizer = Synthesizer.open(sampleRate, bank);
      say.accept(bank.told());
      LapSource all = number -> number == 1 ? first : laps.lap(number);
      return Transport.withSound(all, setup, synthesizer, line, listener);
    } catch (SoundFailure e) {
      if (soundFont.file.isPresent() || soundOutput.isPresent()) {
        throw CommandFailure.couldNot(e.getMessage());
      }
      say.accept(e.getMessage());
      return Transport.onSilentClock(laps, setup, listener);
    }
  }

  /** Reads a part's name. */
  static final class ToPart implements ITypeConverter<Role> {
    @Override
    public Role convert(String text) {
      return Arrays.stream(Role.values())
          .filter(role -> role.title().equalsIgnoreCase(text.strip()))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no part: I expected drums, bass, chords, lead or click"));
    }
  }

  /** Reads a MIDI channel. */
  static final class ToChannel extends WholeNumber {
    ToChannel() {
      super(1, 16, "channels");
    }
  }

  /** Reads the number of a bank. */
  static final class ToBank extends WholeNumber {
    ToBank() {
      super(0, 16_383, "banks");
    }
  }

  /** Reads a latency. */
  static final class ToLatency extends WholeNumber {
    ToLatency() {
      super(0, 1000, "milliseconds");
    }
  }

  /** Reads a sample rate. */
  static final class ToSampleRate extends WholeNumber {
    ToSampleRate() {
      super(22_050, 96_000, "frames a second");
    }
  }

  /** Reads a buffer length. */
  static final class ToBuffer extends WholeNumber {
    ToBuffer() {
      super(10, 2000, "milliseconds");
    }
  }

  /** Reads a volume. */
  static final class ToVolume extends WholeNumber {
    ToVolume() {
      super(0, 100, "a level");
    }
  }
}

package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.play.Performance;
import hingetone.play.SoundInstrument;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.PortInput;
import hingetone.port.Ports;
import hingetone.sound.InputLine;
import hingetone.sound.SoundFailure;
import hingetone.time.Clock;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The instrument that is listened to: at a MIDI port, or through a sound input. */
final class InstrumentOption {
  @Option(
      names = "--in",
      paramLabel = "PORT",
      description =
          "A MIDI port with your guitar, keyboard or foot pedal: its number, or a part of its name.")
  Optional<String> port = Optional.empty();

  @Option(
      names = "--hear",
      paramLabel = "INPUT",
      description = "A sound input with your guitar, one string at a time: a part of its name.")
  Optional<String> sound = Optional.empty();

  @Option(
      names = "--input-channel",
      paramLabel = "N",
      converter = ToInputChannel.class,
      description = "Which channel of the sound input, from 1 (${DEFAULT-VALUE}).",
      defaultValue = "1")
  int channel;

  @Option(
      names = "--delay",
      paramLabel = "MS",
      converter = ToDelay.class,
      description = "How much later than played the input hears you, as listen --delay measures.",
      defaultValue = "0")
  int delayMillis;

  /** Whether one was named. */
  boolean isThere() {
    return port.isPresent() || sound.isPresent();
  }

  /**
   * What listens to it; nothing where none was named.
   *
   * @throws CommandFailure when what was named is not there
   */
  Performance.Instrument open() {
    if (port.isPresent() && sound.isPresent()) {
      throw CommandFailure.wrongInput(
          "--in and --hear do not go together: one instrument at a time.");
    }
    return port.map(InstrumentOption::find)
        .or(() -> sound.map(this::hear))
        .orElse((player, events) -> () -> {});
  }

  private Performance.Instrument hear(String wanted) {
    try {
      InputLine.Settings settings = new InputLine.Settings(Optional.of(wanted), channel);
      return new SoundInstrument(InputLine.open(settings, Clock.SYSTEM), delayMillis);
    } catch (SoundFailure e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  private static Performance.Instrument find(String wanted) {
    Ports.Search search = Ports.find(wanted, Port.Direction.INPUT);
    Port found = search.port().orElseThrow(() -> CommandFailure.wrongInput(search.problem()));
    return (player, events) -> {
      try {
        return PortInput.open(found, PortInput.Filter.ALL, player, events)::close;
      } catch (PortFailure e) {
        throw CommandFailure.couldNot(e.getMessage());
      }
    };
  }

  /** Reads a channel of an input. */
  static final class ToInputChannel extends WholeNumber {
    ToInputChannel() {
      super(1, 32, "channels");
    }
  }

  /** Reads a delay. */
  static final class ToDelay extends WholeNumber {
    ToDelay() {
      super(-60, 2000, "milliseconds");
    }
  }
}

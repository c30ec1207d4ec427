package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.play.Performance;
import hingetone.port.Port;
import hingetone.port.PortFailure;
import hingetone.port.PortInput;
import hingetone.port.Ports;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The MIDI instrument that is listened to. */
final class InstrumentOption {
  @Option(
      names = "--in",
      paramLabel = "PORT",
      description =
          "A MIDI port with your guitar, keyboard or foot pedal: its number, or a part of its name.")
  Optional<String> port = Optional.empty();

  /** Whether one was named. */
  boolean isThere() {
    return port.isPresent();
  }

  /**
   * What listens to it; nothing where none was named.
   *
   * @throws CommandFailure when what was named is not there
   */
  Performance.Instrument open() {
    return port.map(InstrumentOption::find).orElse((player, events) -> () -> {});
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
}

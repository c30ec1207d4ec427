package hingetone.port;

import hingetone.text.Suggestion;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Sequencer;
import javax.sound.midi.Synthesizer;

/** The MIDI ports of this machine, found by number or by a part of their name. */
public final class Ports {
  private Ports() {}

  /**
   * What a search found: the port, or a sentence that says why not and what there is.
   *
   * @param problem empty when a port was found
   */
  public record Search(Optional<Port> port, String problem) {}

  /** Every port of a direction, without the JDK's own synthesizer and sequencer. */
  public static List<Port> all(Port.Direction direction) {
    List<Port> ports = new ArrayList<>();
    for (MidiDevice.Info info : MidiSystem.getMidiDeviceInfo()) {
      Optional<MidiDevice> device = device(info);
      if (device.filter(d -> isPort(d) && direction.fits(d)).isPresent()) {
        int number = ports.size() + 1;
        ports.add(new Port(number, info.getName(), info.getDescription(), direction));
      }
    }
    return ports;
  }

  /**
   * Finds a port: {@code 2}, a whole name or a part of one, in either case.
   *
   * @param wanted what somebody typed
   */
  public static Search find(String wanted, Port.Direction direction) {
    return find(wanted, direction, all(direction));
  }

  static Search find(String wanted, Port.Direction direction, List<Port> ports) {
    String text = wanted.strip();
    List<Port> found = matches(text, ports);
    if (found.size() == 1) {
      return new Search(Optional.of(found.get(0)), "");
    }
    String what = "MIDI " + direction.word();
    if (ports.isEmpty()) {
      return failed("There is no " + what + " on this machine.");
    }
    if (found.isEmpty()) {
      Optional<String> near = Suggestion.nearest(text, ports.stream().map(Port::name).toList());
      String hint = near.map(n -> " Did you mean \"" + n + "\"?").orElse("");
      return failed(
          "There is no " + what + " \"" + text + "\"." + hint + " There are: " + list(ports));
    }
    return failed("\"" + text + "\" fits more than one " + what + ": " + list(found));
  }

  private static Search failed(String problem) {
    return new Search(Optional.empty(), problem);
  }

  private static List<Port> matches(String text, List<Port> ports) {
    if (text.matches("[0-9]{1,4}")) {
      int number = Integer.parseInt(text);
      return ports.stream().filter(p -> p.number() == number).toList();
    }
    List<Port> whole = ports.stream().filter(p -> p.name().equalsIgnoreCase(text)).toList();
    String part = text.toLowerCase(Locale.ROOT);
    List<Port> partly =
        ports.stream()
            .filter(p -> !part.isEmpty() && p.name().toLowerCase(Locale.ROOT).contains(part))
            .toList();
    return whole.isEmpty() ? partly : whole.subList(0, 1);
  }

  private static String list(List<Port> ports) {
    return ports.stream().map(p -> p.number() + " " + p.name()).collect(Collectors.joining(", "))
        + ".";
  }

  /** The device behind a port's name, if it is there. */
  static Optional<MidiDevice> device(String name, Port.Direction direction) {
    for (MidiDevice.Info info : MidiSystem.getMidiDeviceInfo()) {
      if (info.getName().equals(name)) {
        Optional<MidiDevice> device = device(info).filter(direction::fits);
        if (device.isPresent()) {
          return device;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<MidiDevice> device(MidiDevice.Info info) {
    try {
      return Optional.of(MidiSystem.getMidiDevice(info));
    } catch (MidiUnavailableException | IllegalArgumentException e) {
      // It vanished between being listed and being asked for.
      return Optional.empty();
    }
  }

  private static boolean isPort(MidiDevice device) {
    return !(device instanceof Sequencer) && !(device instanceof Synthesizer);
  }
}

package hingetone.command;

import hingetone.port.Port;
import hingetone.port.Ports;
import hingetone.print.Json;
import hingetone.sound.InputLine;
import hingetone.sound.OutputLine;
import hingetone.sound.SoundBank;
import hingetone.text.Printable;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Lists the MIDI ports and the sound outputs of this machine. */
@Command(
    name = "ports",
    description = {
      "List the MIDI ports, sound inputs and sound outputs found.",
      "--in and --out take a number or a part of a name, --hear a part of a name."
    })
final class PortsCommand implements Runnable {
  @Spec CommandSpec spec;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public void run() {
    List<Port> inputs = Ports.all(Port.Direction.INPUT);
    List<Port> outputs = Ports.all(Port.Direction.OUTPUT);
    List<String> sounds = OutputLine.devices();
    List<String> banks = SoundBank.installed().stream().map(Path::toString).toList();
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(
          Json.text(
              Json.object(
                  "midiInputs", inputs.stream().map(PortsCommand::tree).toList(),
                  "midiOutputs", outputs.stream().map(PortsCommand::tree).toList(),
                  "soundInputs",
                      InputLine.devices().stream().map(n -> Json.object("name", n)).toList(),
                  "soundOutputs", sounds.stream().map(n -> Json.object("name", n)).toList(),
                  "soundBanks", banks.stream().map(n -> Json.object("file", n)).toList())));
    } else {
      print(out, "MIDI inputs (--in)", inputs.stream().map(PortsCommand::line).toList());
      print(out, "MIDI outputs (--out)", outputs.stream().map(PortsCommand::line).toList());
      print(out, "Sound inputs (--hear)", InputLine.devices());
      print(out, "Sound outputs", sounds);
      print(
          out,
          "Banks of sounds, the first that has all of a chart's is played",
          banks.isEmpty() ? List.of(SoundBank.JAVAS) : banks);
    }
    out.flush();
  }

  private static Object tree(Port port) {
    return Json.object(
        "number", port.number(), "name", port.name(), "description", port.description());
  }

  private static String line(Port port) {
    boolean says = !port.description().isBlank() && !port.description().equals(port.name());
    return port.number() + "  " + port.name() + (says ? "  (" + port.description() + ")" : "");
  }

  private static void print(PrintWriter out, String title, List<String> lines) {
    out.println(title);
    List<String> shown = lines.isEmpty() ? List.of("none") : lines;
    shown.forEach(line -> out.println("  " + Printable.line(line)));
  }
}

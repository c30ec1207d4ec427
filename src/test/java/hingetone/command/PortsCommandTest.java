package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import hingetone.port.FakePorts;
import hingetone.port.FakePorts.FakePort;
import hingetone.sound.FakeSoundOutput;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class PortsCommandTest {
  private static String run(String... args) {
    StringWriter out = new StringWriter();
    CommandLine line = Main.commandLine();
    line.setOut(new PrintWriter(out, true));
    assertThat(line.execute(args)).isEqualTo(ExitStatus.FINE);
    return out.toString().replace("\r\n", "\n");
  }

  private static String runWithDevices(String... args) {
    try (FakePort keys = FakePorts.input("Shown keys");
        FakePort synth = FakePorts.output("Shown synth");
        FakeSoundOutput sound = FakeSoundOutput.plugIn(FakeSoundOutput.Pace.FREE)) {
      assertThat(sound.opened()).isZero();
      assertThat(keys.received()).isEmpty();
      assertThat(synth.received()).isEmpty();
      return run(args);
    }
  }

  @Test
  void ports_and_outputs_are_listed_with_the_numbers_that_options_take() {
    assertThat(runWithDevices("ports"))
        .containsPattern("MIDI inputs \\(--in\\)\n(  .*\n)*  [0-9]+  Shown keys")
        .containsPattern("MIDI outputs \\(--out\\)\n(  .*\n)*  [0-9]+  Shown synth")
        .contains("Sound outputs\n", "Banks of sounds, the first that has all")
        .contains("  " + FakeSoundOutput.NAME + "\n");
  }

  @Test
  void json_has_them_too() {
    assertThat(runWithDevices("ports", "--json"))
        .contains("\"midiInputs\"", "\"midiOutputs\"", "\"soundOutputs\"", "\"soundBanks\"")
        .contains("\"name\": \"Shown synth\"")
        .containsPattern("\"number\": [0-9]+,\n *\"name\": \"Shown synth\"");
  }
}

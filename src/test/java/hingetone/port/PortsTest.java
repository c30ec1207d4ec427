package hingetone.port;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.port.FakePorts.FakePort;
import java.util.List;
import org.junit.jupiter.api.Test;

class PortsTest {
  private static final List<Port> OUTPUTS =
      List.of(port(1, "Wide Piano"), port(2, "Wide Piano 2"), port(3, "Rack"));

  private static Port port(int number, String name) {
    return new Port(number, name, "", Port.Direction.OUTPUT);
  }

  private static Ports.Search find(String wanted) {
    return Ports.find(wanted, Port.Direction.OUTPUT, OUTPUTS);
  }

  @Test
  void a_port_is_found_by_number_name_or_part_of_it() {
    assertThat(find("3").port()).contains(OUTPUTS.get(2));
    assertThat(find("rack").port()).contains(OUTPUTS.get(2));
    assertThat(find(" ac ").port()).contains(OUTPUTS.get(2));
    assertThat(find("piano 2").port()).contains(OUTPUTS.get(1));
  }

  @Test
  void a_whole_name_wins_over_a_part_of_another() {
    assertThat(find("wide piano").port()).contains(OUTPUTS.get(0));
  }

  @Test
  void an_unknown_name_is_answered_with_a_suggestion_and_what_there_is() {
    assertThat(find("Rakc").problem())
        .isEqualTo(
            "There is no MIDI output \"Rakc\". Did you mean \"Rack\"?"
                + " There are: 1 Wide Piano, 2 Wide Piano 2, 3 Rack.");
    assertThat(find("7").problem()).startsWith("There is no MIDI output \"7\". There are:");
    assertThat(find("").port()).isEmpty();
  }

  @Test
  void a_part_of_several_names_is_not_enough() {
    assertThat(find("wide").problem())
        .isEqualTo("\"wide\" fits more than one MIDI output: 1 Wide Piano, 2 Wide Piano 2.");
  }

  @Test
  void without_ports_it_says_so() {
    assertThat(Ports.find("x", Port.Direction.INPUT, List.of()).problem())
        .isEqualTo("There is no MIDI input on this machine.");
  }

  @Test
  void the_machines_ports_are_listed_by_direction_without_javas_own_devices() {
    try (FakePort in = FakePorts.input("Listed keys");
        FakePort out = FakePorts.output("Listed synth")) {
      List<String> inputs = Ports.all(Port.Direction.INPUT).stream().map(Port::name).toList();
      List<String> outputs = Ports.all(Port.Direction.OUTPUT).stream().map(Port::name).toList();
      assertThat(inputs).contains("Listed keys").doesNotContain("Listed synth");
      assertThat(outputs)
          .contains("Listed synth")
          .doesNotContain("Listed keys", "Gervill", "Real Time Sequencer");
      in.unplug();
      out.unplug();
      assertThat(Ports.find("Listed", Port.Direction.OUTPUT).port()).isEmpty();
    }
  }
}

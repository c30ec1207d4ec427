package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

class GroovesCommandTest {
  @Test
  void each_groove_is_a_line_with_meter_feel_and_tempo() {
    assertThat(output("grooves").lines())
        .contains(
            "coal-train       4/4       swing 66%              92-176   boogie shuffle",
            "plain            any       straight               40-220   plain, for any meter");
  }

  @Test
  void json_says_the_same() throws Exception {
    JsonNode grooves = new ObjectMapper().readTree(output("grooves", "--json")).get("grooves");
    assertThat(grooves.size()).isGreaterThanOrEqualTo(15);
    JsonNode first = grooves.get(0);
    assertThat(first.get("name").asText()).isEqualTo("back-porch");
    assertThat(first.get("slowest").asInt()).isEqualTo(84);
  }

  private static String output(String... args) {
    CommandLine line = Main.commandLine();
    StringWriter out = new StringWriter();
    line.setOut(new PrintWriter(out));
    assertThat(line.execute(args)).isZero();
    return out.toString();
  }
}

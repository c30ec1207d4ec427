package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest extends ProgramRun {
  @TempDir Path folder;

  private int check(String... files) {
    String[] args = new String[files.length + 1];
    args[0] = "check";
    System.arraycopy(files, 0, args, 1, files.length);
    return run(args);
  }

  private String chart(String groove) throws IOException {
    String text =
        "sections:\n  low:\n    key: C minor\n    groove: "
            + groove
            + "\n    bars: |\n      | Cm7 |\n";
    return Files.writeString(folder.resolve("chart.yaml"), text).toString();
  }

  @Test
  void where_all_is_well_it_says_nothing() {
    assertThat(check("demo-charts/mill-race.yaml", "grooves/plain.yaml")).isZero();
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void verbose_says_what_each_file_holds() {
    assertThat(check("-v", "demo-charts/mill-race.yaml", "grooves/gravel-road.yaml")).isZero();
    assertThat(out.toString())
        .contains("mill-race.yaml: \"Mill race\", 24 bars, C mixolydian, F major")
        .contains("gravel-road.yaml: a groove, 4/4, 90 to 160");
  }

  @Test
  void a_groove_that_is_not_there_is_reported_where_it_is_named() throws IOException {
    assertThat(check(chart("gravl-road"))).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(out.toString())
        .contains("chart.yaml:4:13: there is no groove \"gravl-road\"")
        .contains("Did you mean gravel-road?");
  }

  @Test
  void json_has_every_problem_with_its_place() throws IOException {
    assertThat(check("--json", chart("gravl-road"), "no-such.yaml"))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(out.toString())
        .contains("\"line\": 4")
        .contains("\"column\": 13")
        .contains("\"suggestion\": \"gravel-road\"")
        .contains("\"message\": \"there is no such file\"")
        .contains("\"line\": null");
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest extends ProgramRun {
  private static final String CHART = "src/test/resources/handout/weir-steps.yaml";
  private static final Path SHEET = Path.of("src/test/resources/handout/weir-steps.txt");

  private String said(String... args) {
    out.getBuffer().setLength(0);
    assertThat(run(args)).as(err.toString()).isZero();
    assertThat(err.toString()).isEmpty();
    return out.toString();
  }

  private JsonNode prompts(String... options) throws Exception {
    List<String> args = new ArrayList<>(List.of("plan", CHART, "--json"));
    args.addAll(List.of(options));
    return new ObjectMapper().readTree(said(args.toArray(String[]::new))).get("prompts");
  }

  @Test
  void the_plan_is_printed_bar_by_bar() {
    assertThat(said("plan", CHART).lines())
        .startsWith(
            "    0  count-in           & of 3 statement 1",
            "low, D minor",
            "    1  Dm7                1 land",
            "    2  Gm7 / A7 /",
            "    3  Dm7                1 stop; & of 1 reply 2 to 1; 3 land");
    assertThat(said("plan", CHART, "--laps", "2")).contains("lap 1\n", "lap 2\n", "\n   16  D7");
  }

  @Test
  void a_shift_of_key_is_obeyed() {
    assertThat(said("plan", CHART, "--key-shift", "2")).contains("low, E minor", "    1  Em7 ");
  }

  @Test
  void with_notes_each_prompt_has_its_tab_and_its_sentence() {
    List<String> plain = said("plan", CHART).lines().toList();
    List<String> lines = said("plan", CHART, "--notes").lines().toList();
    long phrases = plain.stream().filter(l -> l.contains(" land")).count();
    List<String> ways = plain.stream().filter(l -> l.matches(" {7}(run|hold): .*")).toList();
    assertThat(ways).isNotEmpty();
    assertThat(lines).containsAll(plain.stream().filter(l -> !ways.contains(l)).toList());
    assertThat(ways)
        .allMatch(way -> lines.stream().anyMatch(l -> l.contains(way.strip().split(": ", 2)[1])));
    assertThat(lines.stream().filter(l -> l.startsWith("       E4  |"))).hasSize((int) phrases);
    assertThat(lines.stream().filter(l -> l.matches(" {7}[A-Z][a-z].*\\."))).hasSize((int) phrases);
    assertThat(said("plan", CHART, "--notes")).isEqualTo(String.join("\n", lines) + "\n");
    assertThat(said("plan", CHART, "--notes", "--seed", "9").lines()).isNotEqualTo(lines);
  }

  @Test
  void with_notes_a_tuning_and_a_capo_are_obeyed() {
    assertThat(said("plan", CHART, "--notes", "--tuning", "D A D G A D").lines())
        .anyMatch(l -> l.startsWith("       D4  |"))
        .noneMatch(l -> l.startsWith("       E4  |"));
    assertThat(said("plan", CHART, "--notes", "--capo", "2"))
        .isNotEqualTo(said("plan", CHART, "--notes"));
  }

  /** The keys are those that other programs were promised. */
  @Test
  void the_json_has_every_key_for_every_prompt() throws Exception {
    JsonNode prompts = prompts("--laps", "2");
    assertThat(prompts).hasSize(12);
    for (JsonNode prompt : prompts) {
      assertThat(names(prompt))
          .containsExactly(
              "index",
              "lap",
              "section",
              "role",
              "by",
              "repliesTo",
              "again",
              "ending",
              "speakFrom",
              "landOn",
              "stopBy",
              "crossing",
              "way");
      assertThat(prompt.get("role").asText()).isIn("statement", "reply", "rest");
      assertThat(prompt.get("by").asText()).isIn("player", "machine");
      for (String place : List.of("speakFrom", "landOn", "stopBy")) {
        assertThat(names(prompt.get(place))).containsExactly("bar", "beat");
        assertThat(prompt.at("/" + place + "/bar").isInt()).isTrue();
        assertThat(prompt.at("/" + place + "/beat").asText()).matches("\\d+(\\+\\d+/\\d+)?");
      }
    }
  }

  @Test
  void the_json_says_who_answers_whom_what_comes_back_and_what_crosses() throws Exception {
    JsonNode prompts = prompts();
    assertThat(prompts.findValuesAsText("index")).containsExactly("1", "2", "3", "4", "5", "6");
    assertThat(prompts.at("/0/speakFrom").toString()).isEqualTo("{\"bar\":0,\"beat\":\"3+1/2\"}");
    assertThat(prompts.at("/0/repliesTo").isNull()).isTrue();
    assertThat(prompts.at("/1/repliesTo").asInt()).isEqualTo(1);
    assertThat(prompts.at("/2/again").asInt()).isEqualTo(1);
    assertThat(prompts.at("/2/ending").asText()).isEqualTo("different");
    assertThat(prompts.at("/2/crossing").asText()).isEqualTo("run");
    assertThat(prompts.at("/4/role").asText()).isEqualTo("rest");
    assertThat(prompts.at("/0/crossing").isNull()).isTrue();
  }

  @Test
  void what_is_wrong_is_said_with_status_2_and_nothing_is_printed() {
    for (List<String> wrong :
        List.of(
            List.of("plan"),
            List.of("plan", "no-such.yaml"),
            List.of("plan", CHART, "--laps", "0"),
            List.of("plan", CHART, "--laps", "1001"),
            List.of("plan", CHART, "--laps", "two"),
            List.of("plan", CHART, "--key-shift", "12"),
            List.of("plan", CHART, "--tuning", "drop Q"),
            List.of("plan", CHART, "--note"),
            List.of("plan", "src/test/resources/broken/bar-empty.yaml"))) {
      err.getBuffer().setLength(0);
      assertThat(run(wrong.toArray(String[]::new))).as("%s", wrong).isEqualTo(2);
      assertThat(out.toString()).as("%s", wrong).isEmpty();
      assertThat(err.toString()).as("%s", wrong).isNotBlank().doesNotContain("Exception");
    }
  }

  @Test
  void the_sheet_is_as_it_was_read_and_found_good(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("sheet.txt");
    assertThat(run("render", CHART, "-o", file.toString())).as(err.toString()).isZero();
    assertThat(Files.readString(file)).isEqualTo(Files.readString(SHEET));
  }

  /** Writes the sheet anew; read every difference. */
  public static void main(String[] args) {
    Main.commandLine().execute("render", CHART, "--force", "-o", SHEET.toString());
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }
}

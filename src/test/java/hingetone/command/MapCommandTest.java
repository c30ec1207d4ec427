package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class MapCommandTest extends ProgramRun {
  private JsonNode json(String... options) throws Exception {
    String[] args = new String[options.length + 3];
    args[0] = "map";
    args[1] = "demo-charts/lantern-quay.yaml";
    args[2] = "--json";
    System.arraycopy(options, 0, args, 3, options.length);
    assertThat(run(args)).as(err.toString()).isZero();
    return new ObjectMapper().readTree(out.toString());
  }

  @Test
  void the_json_has_every_key() throws Exception {
    JsonNode map = json();
    assertThat(names(map))
        .containsExactly(
            "title", "tempo", "meter", "sections", "shapes", "touches", "crossings", "turnarounds");
    JsonNode chord = map.at("/sections/0/bars/0/chords/0");
    assertThat(names(chord)).containsExactly("symbol", "beat", "beats", "notes", "scales");
    assertThat(names(chord.at("/scales/0"))).contains("name", "notes", "fit", "why");
    assertThat(names(map.at("/shapes/0")))
        .contains("section", "scale", "start", "pattern", "startNote", "low", "high", "strings");
    JsonNode crossing = map.at("/crossings/0");
    assertThat(names(crossing))
        .contains(
            "atBar", "from", "to", "semitones", "commonTones", "ways", "holds", "runs", "stays");
    assertThat(names(crossing.at("/holds/0")))
        .contains(
            "note",
            "string",
            "fret",
            "degreeBefore",
            "degreeAfter",
            "chordBefore",
            "chordAfter",
            "bend");
    assertThat(names(crossing.at("/runs/0")))
        .contains("figure", "fromFret", "toFret", "frets", "steps");
    assertThat(names(crossing.at("/stays/0"))).contains("from", "to", "low", "high");
    assertThat(names(map.at("/turnarounds/0"))).contains("atBar", "dominant", "to", "scales");
  }

  @Test
  void bends_held_bends_and_double_stops_stand_once_for_each_scale() throws Exception {
    JsonNode touches = json("--scale", "G minor pentatonic").at("/touches");
    assertThat(touches).hasSize(1);
    JsonNode scale = touches.get(0);
    assertThat(texts(scale.at("/bends")))
        .doesNotHaveDuplicates()
        .contains(
            "{'string':2,'fret':13,'cents':200,'from':'C5','to':'D5','release':'C5'}",
            "{'string':1,'fret':6,'cents':50,'from':'Bb4','to':'Bb4','release':null}")
        .anyMatch(bend -> bend.contains("'cents':300"));
    // Common practice: the bend under a held note and its fingering an octave lower.
    assertThat(texts(scale.at("/heldBends")))
        .doesNotHaveDuplicates()
        .contains(
            "{'string':2,'fret':13,'cents':200,'heldString':1,'heldFret':13,'octaveLower':"
                + "[{'string':3,'fret':5},{'string':2,'fret':6}],'octaveHigher':null}");
    JsonNode stops = scale.at("/doubleStops");
    assertThat(stops.findValues("strings")).isNotEmpty().doesNotHaveDuplicates();
    stops.forEach(pair -> assertThat(texts(pair.get("frets"))).doesNotHaveDuplicates());
    assertThat(texts(stops)).anyMatch(p -> p.startsWith("{'strings':[3,2]") && p.contains("[7,8]"));
    out.getBuffer().setLength(0);
    assertThat(texts(json().at("/touches")))
        .extracting(t -> t.substring(0, t.indexOf("'bends'")))
        .doesNotHaveDuplicates();
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new java.util.ArrayList<>();
    list.forEach(item -> texts.add(item.toString().replace('"', '\'')));
    return texts;
  }

  @Test
  void the_seam_is_a_crossing_at_the_forms_length_plus_one() throws Exception {
    JsonNode map = json();
    assertThat(map.at("/crossings/1/atBar").asInt()).isEqualTo(17);
    assertThat(map.at("/crossings/0/semitones").asInt()).isEqualTo(3);
    assertThat(map.at("/crossings/1/semitones").asInt()).isEqualTo(-3);
  }

  @Test
  void json_spells_strictly_and_people_read_the_simpler_name() throws Exception {
    String chart = "demo-charts/slow-tide.yaml";
    assertThat(run("map", chart, "--bar", "16", "--json")).isZero();
    JsonNode map = new ObjectMapper().readTree(out.toString());
    assertThat(map.at("/sections/0/bars/0/chords/0/notes").toString()).contains("B#");
    out.getBuffer().setLength(0);
    assertThat(run("map", chart, "--bar", "16")).isZero();
    assertThat(out.toString()).contains("G#7b9", "has G# C D# F# A of G#7b9").doesNotContain("B#");
  }

  @Test
  void where_no_whole_shape_fits_above_the_capo_the_map_says_so_and_shows_what_is_there() {
    String chart = "demo-charts/lantern-quay.yaml";
    String[] shortNeck = {"map", chart, "--tuning", "C3 G3 D4", "--capo", "12", "--frets", "17"};
    assertThat(run(shortNeck)).as(err.toString()).isZero();
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("no whole shape fits on the 5 frets above the capo; these are the notes they");
  }

  @Test
  void a_section_a_bar_a_scale_a_tuning_and_a_capo_may_be_asked_for() throws Exception {
    JsonNode map = json("--section", "high", "--scale", "Bb dorian", "--capo", "2");
    assertThat(map.at("/sections")).hasSize(1);
    assertThat(map.at("/sections/0/name").asText()).isEqualTo("high");
    assertThat(map.at("/shapes/0/scale").asText()).isEqualTo("Bb dorian");
    out.getBuffer().setLength(0);
    JsonNode bass = json("--tuning", "bass", "--left-handed");
    assertThat(bass.at("/shapes/0/strings")).hasSize(4);
  }

  @Test
  void shapes_are_numbered_as_a_teacher_does() throws Exception {
    String chart = "demo-charts/lantern-quay.yaml";
    assertThat(run("map", chart, "--scale", "G minor pentatonic", "--pattern-one", "4")).isZero();
    assertThat(out.toString()).contains("G minor pentatonic from its 4 (pattern 1)");
    out.getBuffer().setLength(0);
    assertThat(run("map", chart, "--pattern-one", "h4")).isEqualTo(2);
    assertThat(err.toString()).contains("\"h4\" is no degree");
  }

  @Test
  void what_comes_back_is_printed_once(@TempDir Path folder) throws IOException {
    String sections =
        """
        sections:
          low: {key: C minor, bars: '| Cm7 | F7 |'}
          high: {key: Eb minor, bars: '| Ebm7 | Ab7 |'}
        form: %s
        """;
    Path chart = folder.resolve("chart.yaml");
    Files.writeString(chart, sections.formatted("low high low"));
    assertThat(run("map", chart.toString())).isZero();
    long lines = out.toString().lines().count();
    out.getBuffer().setLength(0);

    Files.writeString(chart, sections.formatted("low high low high low"));
    assertThat(run("map", chart.toString())).isZero();
    assertThat(out.toString())
        .contains("low   C minor, 4/4, bars 5 to 6\n  as in bars 1 to 2\n")
        .contains("high   Eb minor, 4/4, bars 7 to 8\n  as in bars 3 to 4\n")
        .contains(
            "crossing at bar 7   C minor to Eb minor, 3 semitones; run, then hold\n  as at bar 3\n");
    // Two sections and two lines more, of three lines each with the blank before.
    assertThat(out.toString().lines().count()).isEqualTo(lines + 4 * 3);
  }

  @Test
  void the_shapes_of_a_scale_asked_for_stand_on_one_page() {
    String chart = "demo-charts/lantern-quay.yaml";
    assertThat(run("map", chart, "--scale", "G minor pentatonic")).isZero();
    assertThat(out.toString().lines().filter(l -> l.contains("G minor pentatonic from its")))
        .hasSize(5)
        .doesNotHaveDuplicates();
    assertThat(out.toString().lines().count()).isLessThan(50);
  }

  @Test
  void no_line_of_the_text_is_wider_than_the_page_and_no_word_is_lost() {
    List<String> words = List.of();
    for (int width : List.of(120, 80, 60)) {
      out.getBuffer().setLength(0);
      CommandLine line = Main.commandLine();
      line.setOut(new PrintWriter(out));
      line.setUsageHelpAutoWidth(false);
      line.setUsageHelpWidth(width);
      assertThat(line.execute("map", "demo-charts/lantern-quay.yaml", "--bar", "9")).isZero();
      assertThat(out.toString().lines()).allMatch(l -> l.length() <= width);
      List<String> said =
          out.toString()
              .lines()
              .filter(l -> !l.matches(".*(─┼|-\\|).*"))
              .flatMap(l -> java.util.Arrays.stream(l.strip().split(" +")))
              .toList();
      assertThat(words.isEmpty() || words.equals(said)).isTrue();
      words = said;
    }
  }

  @Test
  void what_is_not_there_is_said_with_status_2() {
    for (List<String> options :
        List.of(
            List.of("--section", "hihg"),
            List.of("--bar", "17"),
            List.of("--scale", "G dorain"),
            List.of("--tuning", "drop Q"),
            List.of("--frets", "99"))) {
      String[] args = {"map", "demo-charts/lantern-quay.yaml", options.get(0), options.get(1)};
      assertThat(run(args)).as(options.toString()).isEqualTo(2);
    }
    assertThat(err.toString())
        .contains("Did you mean high?", "bars 1 to 16", "Did you mean dorian?")
        .doesNotContain("Exception");
  }

  private static List<String> names(JsonNode node) {
    List<String> names = new java.util.ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import hingetone.chart.ChartKey;
import hingetone.output.ExitStatus;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Track;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that would command a terminal, in every place where others write, come out harmless. */
class HostileTextTest extends ProgramRun {
  /** Sets a window's title, colours, clears; reorders; and every control there is. */
  private static final String COMMANDS = "\u001b]0;X\u0007\u001b[31m\u009b2J\u202e\u2066\u200f";

  private static final String ALL =
      COMMANDS
          + IntStream.concat(
                  IntStream.concat(IntStream.range(1, ' '), IntStream.rangeClosed(0x7F, 0x9F)),
                  IntStream.of(
                      0x061C, 0x200E, 0x202A, 0x202B, 0x202C, 0x202D, 0x2067, 0x2068, 0x2069,
                      0x2028, 0x2029, 0xFEFF))
              .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
          + "\nforged: a line\n";

  private static final String CHART =
      """
      title: "Harbour wall %1$s"
      tempo: 400
      groove: "%3$s"
      sections:
        "low%2$s":
          key: D minor
          bars: |
            | Dm7 |
          phrases: statement 1
        "high%2$s":
          key: F minor
          bars: |
            | C7b9 |
          phrases: reply 1
      """;

  @TempDir Path folder;

  private final InputStream input = System.in;

  /** Playing in lines reads keys, which here are nobody's. */
  @BeforeEach
  void closeInput() {
    System.setIn(InputStream.nullInputStream());
  }

  @AfterEach
  void openInput() {
    System.setIn(input);
  }

  /** A text as it stands between YAML's double quotes. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder();
    text.chars()
        .forEach(
            c ->
                out.append(
                    c < 0x7F && c >= ' ' ? Character.toString(c) : String.format("\\u%04x", c)));
    return out.toString();
  }

  /** A file under the most hostile name that this system takes. */
  private Path file(String ending, String text) throws IOException {
    for (String name : List.of("a" + ALL + ending, "a\u001b]0;X\u0007\nforged: a line" + ending)) {
      try {
        return Files.writeString(folder.resolve(name), text);
      } catch (InvalidPathException | IOException e) {
        continue;
      }
    }
    return Files.writeString(folder.resolve("a" + ending), text);
  }

  private Path chart() throws IOException {
    String groove = Files.readString(Path.of("grooves/gravel-road.yaml"));
    Path file =
        file(
            ".yaml",
            groove.replaceFirst(
                "(?m)^about: .*", "about: \"" + quoted(ALL).replace("\\", "\\\\") + "\""));
    return file(
        "-chart.yaml", CHART.formatted(quoted(ALL), quoted(COMMANDS), quoted(file.toString())));
  }

  private static boolean isHarmful(int c) {
    return c < ' ' && c != '\n' || c >= 0x7F && c <= 0x9F || c > 0x9F && ALL.indexOf(c) >= 0;
  }

  private static void assertHarmless(String text) {
    assertThat(text.codePoints().filter(HostileTextTest::isHarmful).toArray()).as(text).isEmpty();
    assertThat(text.lines()).noneMatch(line -> line.startsWith("forged"));
  }

  private int harmless(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    int status = run(args);
    String said = out.toString() + err;
    assertThat(said).as(Arrays.toString(args)).isNotEmpty().doesNotContain("fault of its own");
    assertHarmless(said.replace("\r\n", "\n"));
    return status;
  }

  private JsonNode json(String... args) throws IOException {
    assertThat(harmless(args)).isEqualTo(ExitStatus.FINE);
    return new ObjectMapper().readTree(out.toString());
  }

  @Test
  void a_chart_whose_every_text_is_hostile_is_harmless_in_every_command() throws IOException {
    String chart = chart().toString();
    for (String command : List.of("check -v", "map", "plan", "plan --notes")) {
      List<String> args = new ArrayList<>(List.of(command.split(" ")));
      args.add(chart);
      assertThat(harmless(args.toArray(String[]::new))).as(command).isEqualTo(ExitStatus.FINE);
    }
  }

  @Test
  void a_hostile_chart_is_harmless_while_it_plays() throws IOException {
    System.setIn(Files.newInputStream(chart()));
    assertThat(harmless("play", "-", "--laps", "1", "--no-count-in")).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).contains("section low·]0;X").contains("Ending");
  }

  @Test
  void json_keeps_every_character_in_its_own_way_of_writing() throws IOException {
    String chart = chart().toString();
    String title = "Harbour wall " + ALL.strip().replaceAll("\\s+", " ");
    assertThat(json("map", "--json", chart).at("/title").asText()).isEqualTo(title);
    assertThat(json("check", "-v", "--json", chart).at("/files/0/file").asText()).isEqualTo(chart);
    assertThat(json("plan", "--json", chart).at("/prompts/0/section").asText())
        .isEqualTo("low" + COMMANDS);
  }

  @Test
  void files_are_written_without_what_would_command_a_terminal() throws Exception {
    String chart = chart().toString();
    for (String ending : List.of(".txt", ".musicxml", ".mid")) {
      Path file = folder.resolve("out" + ending);
      assertThat(harmless("render", chart, "-o", file.toString())).isEqualTo(ExitStatus.FINE);
      String written =
          ending.equals(".mid") ? texts(file) : Files.readString(file, StandardCharsets.UTF_8);
      assertThat(written).contains("Harbour wall ·");
      assertHarmless(written);
    }
    DocumentBuilderFactory xml = DocumentBuilderFactory.newInstance();
    xml.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    assertThat(xml.newDocumentBuilder().parse(folder.resolve("out.musicxml").toFile())).isNotNull();
  }

  /** The texts of a MIDI file's meta events, a line each. */
  private static String texts(Path file) throws Exception {
    StringBuilder texts = new StringBuilder();
    for (Track track : MidiSystem.getSequence(file.toFile()).getTracks()) {
      for (int i = 0; i < track.size(); i++) {
        boolean text = track.get(i).getMessage() instanceof MetaMessage m && m.getType() < 0x10;
        if (text) {
          byte[] data = ((MetaMessage) track.get(i).getMessage()).getData();
          texts.append(new String(data, StandardCharsets.UTF_8)).append('\n');
        }
      }
    }
    return texts.toString();
  }

  @Test
  void a_chart_whose_every_text_is_wrong_is_reported_harmlessly() throws IOException {
    String wrong = "\"" + quoted(ALL) + "\"";
    List<String> lines = new ArrayList<>(List.of(wrong + ": 1"));
    keys(ChartKey.Place.CHART).forEach(key -> lines.add(key + ": " + wrong));
    lines.removeIf(line -> line.startsWith("title") || line.startsWith("sections"));
    lines.addAll(List.of("sections:", "  " + wrong + ": " + wrong, "  low:"));
    keys(ChartKey.Place.SECTION).forEach(key -> lines.add("    " + key + ": " + wrong));
    lines.addAll(List.of("  high:", "    bars: |", "      | D\u202em7 |\u2066| /\u200f |"));
    String chart = file("-chart.yaml", String.join("\n", lines) + "\n").toString();
    for (String command : List.of("check", "check --json", "map", "plan", "play --plain")) {
      List<String> args = new ArrayList<>(List.of(command.split(" ")));
      args.add(chart);
      assertThat(harmless(args.toArray(String[]::new))).isEqualTo(ExitStatus.WRONG_INPUT);
    }
  }

  private static Stream<ChartKey> keys(ChartKey.Place place) {
    return Arrays.stream(ChartKey.values())
        .filter(key -> key.place() == place || key.place() == ChartKey.Place.BOTH);
  }

  @Test
  void arguments_come_back_in_messages_without_their_controls() {
    String demo = "demo-charts/lantern-quay.yaml";
    for (String[] args :
        new String[][] {
          {ALL},
          {"map", "--" + ALL},
          {"map", demo, ALL},
          {"completion", ALL},
          {"manual", ALL},
          {"check", ALL, COMMANDS},
          {"map", ALL},
          {"plan", ALL},
          {"play", "--plain", ALL},
          {"render", ALL, "-o", "x.mid"},
          {"render", demo, "-o", "x" + COMMANDS + "\nforged"},
          {"render", demo, "-o", COMMANDS + "\nforged/x.mid"},
          {"render", demo, "-o", "x.wav", "--soundfont", COMMANDS + "\nforged"},
          {"render", demo, "-o", "x.mid", "--lead", ALL},
          {"map", "--section", ALL, demo},
          {"map", "--scale", ALL, demo},
          {"map", "--bar", ALL, demo},
          {"map", "--tempo", ALL, demo},
          {"map", "--tuning", ALL, demo},
          {"map", "--seed", ALL, demo},
          {"plan", "--laps", ALL, demo},
          {"play", "--plain", "--groove", ALL, demo},
          {"play", "--plain", "--ramp", ALL, demo},
          {"play", "--plain", "--out", ALL, demo},
          {"play", "--plain", "--in", ALL, demo},
          {"play", "--plain", "--channels", ALL, demo},
        }) {
      assertThat(harmless(args)).as(Arrays.toString(args)).isNotEqualTo(ExitStatus.FINE);
    }
  }
}

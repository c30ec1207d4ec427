package hingetone.groove;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.Page;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GroovesPageTest {
  static Stream<GrooveKey> keysWithExamples() {
    return Arrays.stream(GrooveKey.values()).filter(key -> !key.example().isEmpty());
  }

  @Test
  void the_page_lists_the_keys_that_the_reader_takes() throws IOException {
    String page = Files.readString(GroovesPage.FILE);

    assertThat(page).isEqualTo(GroovesPage.withTable(page));
    for (GrooveKey key : GrooveKey.values()) {
      assertThat(page).contains("| `" + key.word() + "` |");
    }
  }

  @Test
  void the_page_says_every_sign() throws IOException {
    String page = Files.readString(GroovesPage.FILE);
    String bass = page.substring(page.indexOf("## Bass"), page.indexOf("## Chords"));
    for (String sign : BassStyle.SIGNS.split("")) {
      String shown = "234567".contains(sign) ? "| `2` to `7` |" : "| `" + sign + "` |";
      assertThat(bass).contains(shown);
    }
    String chords = page.substring(page.indexOf("## Chords"), page.indexOf("## For any meter"));
    for (String sign : ChordStyle.SIGNS.split("")) {
      assertThat(chords).contains("`" + sign + "`");
    }
    String drums = page.substring(page.indexOf("## Drums"), page.indexOf("## Bass"));
    StrokeSign.VELOCITIES.forEach(
        (sign, velocity) -> {
          if (!Character.isDigit(sign)) {
            assertThat(drums).containsPattern("`" + sign + "`[^`]*\\(?(velocity\\s)?" + velocity);
          }
        });
  }

  @Test
  void every_groove_on_the_page_is_read() throws IOException {
    List<String> examples = Page.examples(GroovesPage.FILE);
    assertThat(examples).hasSize(2);
    for (String groove : examples) {
      assertThat(problems(groove)).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("keysWithExamples")
  void the_example_of_every_key_is_read_wherever_it_may_stand(GrooveKey key) {
    for (GrooveKey.Place place : key.places()) {
      assertThat(problems(groove(key, place))).as(key + " " + place).isEmpty();
    }
  }

  private static List<String> problems(String groove) {
    Reading<Groove> reading = GrooveReader.read(new Source("grooves.md", groove), "example");
    return reading.problems().stream().map(Diagnostic::report).toList();
  }

  /** A groove for 4/4, or for the meters of the key's example, with the key in its place. */
  private static String groove(GrooveKey key, GrooveKey.Place place) {
    String line = key.word() + ": " + key.example() + "\n";
    boolean meters = key == GrooveKey.METERS || key == GrooveKey.DRAWN_FOR;
    StringBuilder text = new StringBuilder();
    text.append(key == GrooveKey.METERS ? "" : meters ? "meter: 5/4, 7/8\n" : "meter: 4/4\n");
    text.append(place == GrooveKey.Place.GROOVE ? line : "");
    text.append(place == GrooveKey.Place.HUMAN ? "human:\n  " + line : "");
    text.append("drums:\n").append(place == GrooveKey.Place.DRUMS ? "  " + line : "");
    text.append("  patterns:\n");
    String signs = "{bass drum 1: x.......}";
    if (meters) {
      text.append("    - {meter: 5/4, lanes: {bass drum 1: x....}}\n");
      text.append("    - {meter: 7/8, lanes: {bass drum 1: x......}}\n");
    } else {
      text.append("    - lanes: ").append(signs).append('\n');
      text.append(place == GrooveKey.Place.PATTERN ? "      " + line : "");
    }
    if (place == GrooveKey.Place.FILL) {
      text.append("  fills:\n    - lanes: {acoustic snare: x.x.}\n      ").append(line);
    }
    text.append("bass:\n").append(place == GrooveKey.Place.BASS ? "  " + line : "");
    text.append(lines(meters, key, place, line));
    text.append("chords:\n").append(place == GrooveKey.Place.CHORDS ? "  " + line : "");
    return text.append(lines(meters, GrooveKey.ABOUT, GrooveKey.Place.GROOVE, "")).toString();
  }

  private static String lines(boolean meters, GrooveKey key, GrooveKey.Place place, String line) {
    if (meters) {
      return "  patterns: [{meter: 5/4, line: -----}, {meter: 7/8, line: -------}]\n";
    }
    String own = key == GrooveKey.LINE ? "" : "      line: ----\n";
    String first = key == GrooveKey.WEIGHT ? "band: full" : "weight: 1";
    return "  patterns:\n    - "
        + first
        + "\n"
        + own
        + (place == GrooveKey.Place.LINE ? "      " + line : "");
  }
}

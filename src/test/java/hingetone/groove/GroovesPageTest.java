package hingetone.groove;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.text.Diagnostic;
import hingetone.text.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page on grooves against what the reader takes. */
class GroovesPageTest {
  private static final Path PAGE = Path.of("src/docs/grooves.md");
  private static final Pattern KNOWN =
      Pattern.compile("I know these keys in (?:a )?([^:]+): (.+)\\.");

  /** With a key that nobody knows wherever keys are. */
  private static final String WRONG_EVERYWHERE =
      """
      meter: 4/4
      zzz: 1
      human: {zzz: 1}
      drums:
        zzz: 1
        patterns:
          - {zzz: 1, lanes: {side stick: x...}}
        fills:
          - {zzz: 1, size: small, beats: 1, lanes: {side stick: x}}
      bass:
        zzz: 1
        patterns:
          - {zzz: 1, line: 1---}
      chords:
        zzz: 1
        patterns:
          - {zzz: 1, line: x---}
      """;

  @Test
  void the_page_names_every_key_that_the_reader_knows() throws IOException {
    String page = Files.readString(PAGE);
    List<String> places = new ArrayList<>();
    for (Diagnostic problem :
        GrooveReader.read(new Source("wrong", WRONG_EVERYWHERE), "wrong").problems()) {
      Matcher known = KNOWN.matcher(problem.report().replace("\n", " "));
      assertThat(known.find()).as(problem.report()).isTrue();
      places.add(known.group(1));
      for (String key : known.group(2).split("\\. Did")[0].split(", ?")) {
        assertThat(page).as("%s in %s", key, known.group(1)).contains("`" + key.strip() + "`");
      }
    }
    assertThat(places)
        .containsExactlyInAnyOrder(
            "groove",
            "human",
            "drums",
            "patterns",
            "fills",
            "bass",
            "patterns",
            "chords",
            "patterns");
  }

  @Test
  void the_page_names_every_sign() throws IOException {
    String page = Files.readString(PAGE);
    for (String sign : (BassStyle.SIGNS + ChordStyle.SIGNS).split("")) {
      boolean degree = sign.matches("[3-6]");
      assertThat(page).as(sign).contains(degree ? "| `2` to `7` |" : "`" + sign + "`");
    }
  }
}

package hingetone.ground;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.ground.scales.Weights;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class GroundPageTest {
  private static final Pattern TEST = Pattern.compile("`(\\w+Test)\\.(\\w+)`");

  @Test
  void the_page_on_the_ground_has_every_weight_as_the_code_has_it() throws Exception {
    String page = GroundPage.page();
    assertThat(page).isEqualTo(GroundPage.withWeights(page));
    for (Field field : Weights.class.getDeclaredFields()) {
      field.setAccessible(true);
      assertThat(page).contains("`" + field.getName() + "` " + number(field.get(null)));
    }
  }

  private static String number(Object value) {
    return value.toString().replaceFirst("\\.0$", "");
  }

  @Test
  void its_sentences_say_the_same_numbers() throws IOException {
    String page = GroundPage.page().replaceAll("\\s+", " ");
    assertThat(page)
        .contains(
            "fit = %s chord + %s clash + %s key + %s tonic + %s ease"
                .formatted(Weights.CHORD, Weights.CLASH, Weights.KEY, Weights.TONIC, Weights.EASE))
        .contains(
            "the old key (%s) and the new (%s)"
                .formatted(Weights.DEGREE_BEFORE, Weights.DEGREE_AFTER))
        .contains(
            "the chord before (%s) and after the line (%s)"
                .formatted(Weights.CHORD_BEFORE, Weights.CHORD_AFTER))
        .contains(
            "chord counts %s, moving as far as the old scale must to become the new one %s"
                .formatted(number(Weights.LANDS_ON_CHORD), Weights.AS_THE_KEY_MOVES))
        .contains(
            "high strings %s, starting on the old chord %s, landing on the tonic %s, each fret of the way −%s"
                .formatted(
                    Weights.HIGH_STRINGS,
                    Weights.STARTS_ON_CHORD,
                    Weights.LANDS_ON_TONIC,
                    Weights.FRET_WALKED))
        .contains(
            "a wide stretch counts %s mm, a too wide one %s"
                .formatted(number(Weights.WIDE_STRETCH), number(Weights.TOO_WIDE_STRETCH)));
  }

  @Test
  void every_test_that_the_page_names_exists() throws IOException {
    List<MatchResult> named = TEST.matcher(GroundPage.page()).results().toList();
    assertThat(named).hasSizeGreaterThan(20);
    List<String> missing = new ArrayList<>();
    for (MatchResult test : named) {
      if (!code(test.group(1)).contains("void " + test.group(2) + "(")) {
        missing.add(test.group());
      }
    }
    assertThat(missing).isEmpty();
  }

  private static String code(String name) throws IOException {
    try (var files = Files.walk(Path.of("src/test/java"))) {
      Path file = files.filter(f -> f.endsWith(name + ".java")).findFirst().orElseThrow();
      return Files.readString(file);
    }
  }
}

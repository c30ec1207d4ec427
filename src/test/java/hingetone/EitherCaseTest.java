package hingetone;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.ChartReader;
import hingetone.groove.GrooveReader;
import hingetone.phrase.PhraseReader;
import hingetone.text.reading.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Words from a list are the same in either case, in every format. */
class EitherCaseTest {
  private static final String CHART =
      """
      band: full
      swing: 60%
      instrument: guitar
      sections:
        quay:
          key: C minor
          bars: '| Cm7 | G7 |'
          phrases: statement 2, reply 2, statement 2 again, rest 2
          leave: run, hold
      """;

  private static final String PHRASE =
      """
      statements:
        gate:
          key: C minor
          meter: 4/4
          feel: swung
          notes: '| C4q Eb4q'
      """;

  private static String inCapitals(String text, String words) {
    return Pattern.compile("\\b(" + words + ")\\b")
        .matcher(text)
        .replaceAll(word -> word.group().toUpperCase(Locale.ROOT));
  }

  @Test
  void in_charts() {
    String words = "full|guitar|minor|statement|reply|again|rest|run|hold";
    String capitals = inCapitals(CHART, words);
    assertThat(capitals).contains("band: FULL", "STATEMENT 2 AGAIN");
    assertThat(ChartReader.read(new Source("words", capitals)).value())
        .isPresent()
        .isEqualTo(ChartReader.read(new Source("words", CHART)).value());
  }

  @Test
  void in_grooves() throws IOException {
    String groove = Files.readString(Path.of("grooves/back-porch.yaml"));
    String capitals = inCapitals(groove, "(?<=: )(any|small|medium|big|sections|power|yes|no)");
    assertThat(capitals).contains("size: SMALL", "voicing: POWER", "lead-in: SECTIONS");
    assertThat(GrooveReader.read(new Source("words", capitals), "porch").value())
        .isPresent()
        .isEqualTo(GrooveReader.read(new Source("words", groove), "porch").value());
  }

  @Test
  void in_phrases() {
    String capitals = inCapitals(PHRASE, "swung|minor");
    assertThat(capitals).contains("feel: SWUNG");
    assertThat(PhraseReader.read(new Source("words", capitals)).value())
        .isPresent()
        .isEqualTo(PhraseReader.read(new Source("words", PHRASE)).value());
  }
}

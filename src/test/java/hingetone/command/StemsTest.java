package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.score.Part;
import hingetone.score.Role;
import hingetone.score.Score;
import hingetone.sound.SoundBank;
import hingetone.text.reading.Source;
import org.junit.jupiter.api.Test;

/** {@link StemsMeasure} measures every demo chart and every groove. */
class StemsTest {
  /** Everything that shares a channel or changes one: a click, a riff, another groove, a lead. */
  private static final String CHART =
      """
      title: Ferry steps
      tempo: 220
      groove: gravel-road
      sections:
        pier:
          key: C minor
          bars: |
            | Cm7 | F7 |
          phrases: statement 1, reply 1
          riff: {bass: 'C2q G2q Bb2q C3q F2q A2q C3q Eb3q'}
        deck:
          key: E minor
          groove: copper-alley
          bars: |
            | Em7 | B7 |
          phrases: statement 1, reply 1
      """;

  @Test
  void added_up_they_are_the_whole_before_its_limiter() throws Exception {
    Chart chart = ChartReader.read(new Source("", CHART)).value().orElseThrow();
    Score score = StemsMeasure.score(chart);
    assertThat(score.parts()).extracting(Part::role).contains(Role.values());
    assertThat(StemsMeasure.difference(score, SoundBank.builtIn())).isLessThan(-100);
  }
}

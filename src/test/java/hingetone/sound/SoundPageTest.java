package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.sequencer.PlaySetup;
import hingetone.sound.file.SoundFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Holds the page on sound to the formulas and to the program. */
class SoundPageTest {
  private static String page() throws IOException {
    return Files.readString(Path.of("src/docs/sound.md")).replaceAll("\\s+", " ");
  }

  /** NIOSH publication 98-126: 85 dBA for 8 hours, half the time for each 3 dB. */
  @Test
  void the_table_of_exposure_follows_the_formula() throws IOException {
    var rows = Pattern.compile("\\| (\\d+) \\| (\\d+) min").matcher(page()).results().toList();
    assertThat(rows).hasSize(6);
    for (MatchResult row : rows) {
      double level = Double.parseDouble(row.group(1));
      assertThat(480 / Math.pow(2, (level - 85) / 3)).isEqualTo(Double.parseDouble(row.group(2)));
    }
  }

  /** WHO-ITU H.870: 80 dB for 40 hours a week, by equal energy. */
  @Test
  void the_weekly_dose_follows_the_formula() throws IOException {
    assertThat(page()).contains("80 dB for 40 hours a week: 83 dB for 20 hours, 86 dB for 10");
    assertThat(40 / Math.pow(2, (83 - 80) / 3.0)).isEqualTo(20);
    assertThat(40 / Math.pow(2, (86 - 80) / 3.0)).isEqualTo(10);
  }

  @Test
  void the_page_names_the_programs_own_figures() throws IOException {
    assertThat(page())
        .contains("brought to " + Long.toString((long) SoundFile.LOUDNESS).replace('-', '−'))
        .contains("starts at " + PlaySetup.MODERATE_VOLUME + " of 100")
        .contains("The output line holds " + OutputLine.USUAL_BUFFER_MILLIS + " ms");
    double lower = -20 * Math.log10(Volume.gain(PlaySetup.MODERATE_VOLUME));
    assertThat(Math.round(lower)).isEqualTo(9);
  }
}

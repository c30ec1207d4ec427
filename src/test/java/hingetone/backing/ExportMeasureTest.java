package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.groove.Feel;
import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ExportMeasureTest {
  static List<Groove> grooves() {
    return Grooves.builtIn().all();
  }

  /** Percussion keys: General MIDI System Level 1, percussion key map. */
  @ParameterizedTest
  @MethodSource("grooves")
  void an_exported_file_holds_what_the_groove_says(Groove groove) throws IOException {
    ExportMeasure measured = new ExportMeasure(groove, 1);
    assertThat(measured.notes).isGreaterThan(250);
    assertThat(measured.unpaired).as("notes without their end").isZero();
    assertThat(measured.wrongDrums).as("keys that are no percussion").isZero();
    assertThat(measured.wrongPrograms).as("programs not the groove's").isZero();
    assertThat(measured.unequalBytes).as("laps that differ with the same seed").isZero();
    assertThat(measured.straight()).as("off-beats that do not swing").isZero();
    if (groove.feel().percent() != Feel.STRAIGHT_PERCENT) {
      assertThat(measured.at(measured.offBeatDue())).as("off-beats in place").isPositive();
    }
    assertThat(measured.mostOff).isBetween(0.5, (double) groove.human().timingMillis());
    assertThat(measured.mostStrum).isLessThanOrEqualTo(groove.chords().strumMillis());
    assertThat(measured.mostTouch).isBetween(1, groove.human().touch());
  }
}

package hingetone.backing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.groove.Human;
import hingetone.score.Role;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the second table of {@code src/docs/band.md} shows, held for every groove. */
class TimeMeasureTest {
  /** An ornament of the bass drum, or a root where a chord comes, is nobody's pattern. */
  private static final double OF_PATTERNS = 6;

  /** A part's mean over hundreds of notes, whose spread is a few milliseconds. */
  private static final Offset<Double> MEAN = within(0.6);

  private static final int SNARE = 38;

  static List<Groove> grooves() {
    return Grooves.builtIn().all();
  }

  @ParameterizedTest
  @MethodSource("grooves")
  void the_band_goes_together_as_its_groove_says(Groove groove) {
    TimeMeasure measured = TimeMeasure.of(groove);
    int asked = groove.bass().withKickPercent();
    assertThat(asked).as("what it asks").isPositive();
    assertThat(measured.kickWithBass())
        .as("strokes of the bass drum with the bass")
        .isBetween(asked - OF_PATTERNS, asked + OF_PATTERNS);
    assertThat(measured.light()).as("a light lap").isLessThan(85);
    assertThat(measured.full()).as("a full lap").isGreaterThan(105);
    Human human = groove.human();
    assertThat(measured.snare())
        .as("backbeat")
        .isCloseTo(human.late(Human.Lane.of(Role.DRUMS, SNARE)), MEAN);
    assertThat(measured.bass()).as("bass").isCloseTo(human.late(Human.Lane.of(Role.BASS, 0)), MEAN);
    int chords = human.late(Human.Lane.of(Role.CHORDS, 0));
    assertThat(measured.chords())
        .as("chords")
        .isBetween(chords - 0.6, chords + 0.6 + groove.chords().strumMillis());
  }
}

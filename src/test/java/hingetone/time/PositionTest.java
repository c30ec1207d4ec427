package hingetone.time;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PositionTest {
  /** Common practice: 1 e & a. */
  @ParameterizedTest
  @CsvSource({
    "3, beat 3",
    "1+1/4, the e of 1",
    "3+1/2, the & of 3",
    "12+3/4, the a of 12",
    "2+1/3, beat 2+1/3"
  })
  void half_beats_are_told_as_players_count(String beat, String counted) {
    assertThat(new Position(5, Beats.parse(beat).orElseThrow()).counted()).isEqualTo(counted);
  }
}

package hingetone.hearing.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class FirstHearingTest {
  @Test
  void an_attack_above_160_hertz_is_told_within_45_ms_and_the_lowest_string_within_75() {
    for (int midi : new int[] {40, 45, 52, 57, 64, 69, 76}) {
      float[] sound =
          PluckedStrings.inTurn(PluckedStrings.silence(0.3), PluckedStrings.picked(t -> midi, 0.4));
      List<FirstHearing.Attack> attacks = heard(sound, 100);
      assertThat(attacks).as("MIDI %d", midi).hasSize(1);
      assertThat(attacks.get(0).midi()).isCloseTo(midi, within(0.2));
      assertThat(attacks.get(0).at()).isCloseTo(0.3, within(0.01));
      assertThat(attacks.get(0).heardAt()).isLessThan(0.3 + (midi < 52 ? 0.075 : 0.045));
    }
  }

  @Test
  void the_blocks_make_no_difference() {
    float[] sound =
        PluckedStrings.inTurn(
            PluckedStrings.silence(0.1),
            PluckedStrings.picked(t -> 60, 0.3),
            PluckedStrings.silence(0.05),
            PluckedStrings.picked(t -> 64, 0.3));
    assertThat(heard(sound, 64)).isEqualTo(heard(sound, 1024)).hasSize(2);
  }

  @Test
  void silence_has_no_attack() {
    assertThat(heard(PluckedStrings.silence(1), 256)).isEmpty();
  }

  private static List<FirstHearing.Attack> heard(float[] sound, int block) {
    FirstHearing hearing = new FirstHearing();
    List<FirstHearing.Attack> attacks = new ArrayList<>();
    for (int from = 0; from < sound.length; from += block) {
      attacks.addAll(
          hearing.hear(Arrays.copyOfRange(sound, from, Math.min(sound.length, from + block))));
    }
    return attacks;
  }
}

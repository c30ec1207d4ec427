package hingetone.sound.level;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BankLevelsTest {
  @Test
  void a_text_reads_back_as_what_it_was_written_from() {
    BankLevels levels =
        new BankLevels(
            Map.of(0, -21.5, 127, Double.NEGATIVE_INFINITY), Map.of(36, -18.0, 42, -30.3));
    assertThat(levels.text()).startsWith("program 0 -21.5\n");
    assertThat(BankLevels.parse(levels.text())).isEqualTo(levels);
    assertThat(BankLevels.parse("")).isEqualTo(BankLevels.NONE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"program 0", "cat 1 2", "program x -3", "drum 3 loud", "program 1 2 3"})
  void what_is_no_text_of_figures_is_refused(String text) {
    assertThatThrownBy(() -> BankLevels.parse(text)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void silence_and_what_is_not_known_are_left_alone() {
    BankLevels silent =
        new BankLevels(Map.of(33, Double.NEGATIVE_INFINITY), Map.of(36, Double.NEGATIVE_INFINITY));
    for (BankLevels levels : new BankLevels[] {silent, BankLevels.NONE}) {
      assertThat(levels.trim(33)).isZero();
      assertThat(levels.kitTrim()).isZero();
      assertThat(levels.drumTrim(36)).isZero();
    }
  }

  @Test
  void every_program_and_every_drum_of_general_midi_has_a_figure_reckoned_with() {
    assertThat(BankLevels.usual().programs()).hasSize(128);
    for (int key = 35; key <= 81; key++) {
      assertThat(BankLevels.usual().drums().get(key)).as("drum " + key).isFinite();
    }
  }

  @Test
  void an_unknown_bank_has_no_figures() {
    assertThat(BankLevels.shippedOf("0123456789abcdef")).isEqualTo(BankLevels.NONE);
  }
}

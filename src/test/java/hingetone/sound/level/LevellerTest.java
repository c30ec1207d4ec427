package hingetone.sound.level;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.midi.MidiEvents;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LevellerTest {
  private static final int BASS = 33;
  private static final int EXPRESSION = 11;
  private static final int KICK = 36;
  private static final int SNARE = 38;
  private static final int HAT = 42;

  /** The figures reckoned with, so many dB louder. */
  private static BankLevels louder(double bass, double kick, double snare, double hat) {
    BankLevels usual = BankLevels.usual();
    return new BankLevels(
        Map.of(BASS, usual.programs().get(BASS) + bass),
        Map.of(
            KICK, usual.drums().get(KICK) + kick,
            SNARE, usual.drums().get(SNARE) + snare,
            HAT, usual.drums().get(HAT) + hat));
  }

  private static ShortMessage program(int channel, int program) {
    return MidiEvents.message(ShortMessage.PROGRAM_CHANGE, channel, program, 0);
  }

  private static ShortMessage on(int channel, int key, int velocity) {
    return MidiEvents.message(ShortMessage.NOTE_ON, channel, key, velocity);
  }

  /**
   * What a value of expression or velocity does to the level, in dB: 40 log(value / 127), as
   * General MIDI level 2 recommends (from memory).
   */
  private static double decibels(double value, double of) {
    return 40 * Math.log10(value / of);
  }

  private static double expression(List<ShortMessage> messages) {
    ShortMessage last =
        messages.stream()
            .filter(message -> message.getCommand() == ShortMessage.CONTROL_CHANGE)
            .filter(message -> message.getData1() == EXPRESSION)
            .reduce((first, second) -> second)
            .orElseThrow();
    return decibels(last.getData2(), 127) + 20 * Math.log10(Leveller.GAIN);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-11, -4.5, 0, 3, 9.5, 20})
  void a_program_comes_out_as_loud_as_reckoned_with(double louder) {
    Leveller leveller = new Leveller(() -> louder(louder, 0, 0, 0));
    List<ShortMessage> messages = leveller.adapt(program(1, BASS));
    assertThat(messages.get(0).getData1()).isEqualTo(BASS);
    assertThat(expression(messages)).isCloseTo(-louder, within(0.4));
    assertThat(leveller.adapt(on(1, 40, 90))).hasSize(1);
  }

  @Test
  void it_stays_so_when_controllers_are_reset() {
    Leveller leveller = new Leveller(() -> louder(6, 0, 0, 0));
    leveller.adapt(program(1, BASS));
    ShortMessage reset = MidiEvents.message(ShortMessage.CONTROL_CHANGE, 1, 121, 0);
    assertThat(leveller.adapt(reset)).element(0).isSameAs(reset);
    assertThat(expression(leveller.adapt(reset))).isCloseTo(-6, within(0.2));
  }

  @Test
  void a_drum_is_struck_so_that_with_its_kits_level_it_is_as_loud_as_reckoned_with() {
    Leveller leveller = new Leveller(() -> louder(0, -3, 1, 7));
    double kit = expression(leveller.adapt(program(9, 0)));
    Map<Integer, Double> raised = new HashMap<>();
    for (int key : List.of(KICK, SNARE, HAT)) {
      int velocity = leveller.adapt(on(9, key, 100)).get(0).getData2();
      raised.put(key, kit + decibels(velocity, 100));
    }
    assertThat(raised.get(KICK)).isCloseTo(3, within(0.3));
    assertThat(raised.get(SNARE)).isCloseTo(-1, within(0.3));
    assertThat(raised.get(HAT)).isCloseTo(-7, within(0.3));
  }

  @Test
  void what_is_not_measured_stays_as_it_is() {
    Leveller leveller = new Leveller(() -> louder(9, 5, 5, 5));
    assertThat(expression(leveller.adapt(program(2, 27)))).isCloseTo(0, within(0.1));
    leveller.adapt(program(9, 0));
    assertThat(leveller.adapt(on(9, 56, 90)).get(0).getData2()).isEqualTo(90);
    assertThat(leveller.adapt(on(9, HAT, 0)).get(0).getData2()).isZero();
  }

  @Test
  void a_note_before_any_program_has_its_level_at_once() {
    List<ShortMessage> messages = new Leveller(() -> BankLevels.NONE).adapt(on(3, 60, 90));
    assertThat(expression(messages)).isCloseTo(0, within(0.1));
    assertThat(messages.get(1).getData1()).isEqualTo(60);
  }

  @Test
  void figures_that_come_while_a_channel_plays_take_hold_over_some_notes() {
    AtomicReference<BankLevels> known = new AtomicReference<>(BankLevels.NONE);
    Leveller leveller = new Leveller(known::get);
    List<Double> levels = new ArrayList<>(List.of(expression(leveller.adapt(program(1, BASS)))));
    known.set(louder(8, 0, 0, 0));
    for (List<ShortMessage> one = leveller.adapt(on(1, 40, 90));
        one.size() > 1;
        one = leveller.adapt(on(1, 40, 90))) {
      levels.add(expression(one));
    }
    for (int i = 1; i < levels.size(); i++) {
      assertThat(levels.get(i) - levels.get(i - 1)).isBetween(-2.8, 0.0);
    }
    assertThat(levels.get(levels.size() - 1)).isCloseTo(-8, within(0.3));
  }
}

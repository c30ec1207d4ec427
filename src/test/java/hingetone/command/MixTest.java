package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.score.Role;
import hingetone.sound.SoundBank;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The aims of the mix in {@code src/docs/band.md}; {@link MixMeasure} measures every groove. */
class MixTest {
  /**
   * The aim is 1.5. Java makes its built-in sounds with random phases, once for each machine: over
   * four of them, each measured, these parts lay up to 1.6 from their places.
   */
  private static final double SPREAD = 2;

  @ParameterizedTest
  @ValueSource(strings = {"gravel-road", "coal-train", "copper-alley"})
  void drums_and_bass_carry_and_the_chords_lie_under_them(String name) throws Exception {
    Groove groove = Grooves.builtIn().read(name).value().orElseThrow();
    Map<Role, Double> mix = MixMeasure.of(groove, SoundBank.builtIn()).parts();
    assertThat(mix.get(Role.DRUMS)).isCloseTo(-3, within(SPREAD));
    assertThat(mix.get(Role.BASS)).isCloseTo(-4, within(SPREAD));
    assertThat(mix.get(Role.CHORDS)).isCloseTo(-7.5, within(SPREAD));
  }
}

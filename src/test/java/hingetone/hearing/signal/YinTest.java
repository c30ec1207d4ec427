package hingetone.hearing.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.Comparator;
import org.junit.jupiter.api.Test;

class YinTest {
  private final Yin yin = new Yin();

  @Test
  void tones_from_60_to_1400_hertz_are_right_within_a_thousandth() {
    for (double hertz = 60; hertz <= 1400; hertz *= 1.0293) {
      assertThat(heard(PluckedStrings.tone(hertz, 0.2)))
          .as("%.1f Hz", hertz)
          .isCloseTo(hertz, part(0.001, hertz));
    }
  }

  @Test
  void with_noise_20_decibels_below_they_are_right_within_half_a_hundredth() {
    for (double hertz = 60; hertz <= 1400; hertz *= 1.0293) {
      float[] noisy = PluckedStrings.withNoise(PluckedStrings.tone(hertz, 0.2), 20);
      assertThat(heard(noisy)).as("%.1f Hz", hertz).isCloseTo(hertz, part(0.005, hertz));
    }
  }

  @Test
  void plucked_strings_are_heard_in_tune() {
    for (int midi = 40; midi <= 84; midi += 4) {
      double hertz = Sampling.hertz(midi);
      double heard = heard(PluckedStrings.plucked(hertz, 0.3, midi));
      assertThat(heard).as("MIDI %d", midi).isCloseTo(hertz, part(0.004, hertz));
    }
  }

  /** The distribution function by adding up its density, 18 · 19 · x · (1 − x)^17, instead. */
  @Test
  void thresholds_are_spread_as_the_beta_distribution_says() {
    double sum = 0;
    double step = 1e-5;
    for (double x = step / 2; x < 0.3; x += step) {
      sum += 18 * 19 * x * Math.pow(1 - x, 17) * step;
    }
    assertThat(Yin.thresholdsBelow(0.3)).isCloseTo(sum, within(1e-6));
    assertThat(Yin.thresholdsBelow(0)).isZero();
    assertThat(Yin.thresholdsBelow(1)).isEqualTo(1);
  }

  /** The likeliest pitch in the middle of a sound, in hertz. */
  private double heard(float[] sound) {
    return yin.candidates(sound, (sound.length - Yin.FRAME) / 2).stream()
        .max(Comparator.comparingDouble(Yin.Candidate::probability))
        .map(candidate -> Sampling.hertz(candidate.midi()))
        .orElse(0.0);
  }

  private static org.assertj.core.data.Offset<Double> part(double share, double of) {
    return within(share * of);
  }
}

package hingetone.hearing.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.Comparator;
import java.util.List;
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

  /** Equations 6 and 8 of de Cheveigné and Kawahara (2002) added up sample by sample instead. */
  @Test
  void dips_are_those_of_the_published_equations() {
    for (double hertz : new double[] {70, 196, 440, 987}) {
      float[] sound = PluckedStrings.withNoise(PluckedStrings.tone(hertz, 0.2), 12);
      List<Yin.Candidate> candidates = yin.candidates(sound, 1000);
      assertThat(candidates).isNotEmpty();
      double[] published = published(sound, 1000);
      for (Yin.Candidate candidate : candidates) {
        int lag = (int) Math.round(Sampling.RATE / Sampling.hertz(candidate.midi()));
        double least = Math.min(published[lag], Math.min(published[lag - 1], published[lag + 1]));
        assertThat(candidate.dip()).isCloseTo(least, within(1e-4));
      }
    }
  }

  private static double[] published(float[] sound, int from) {
    double[] normalised = new double[400];
    double sum = 0;
    for (int lag = 1; lag < normalised.length; lag++) {
      double difference = 0;
      for (int i = from; i < from + Yin.WINDOW; i++) {
        difference += Math.pow(sound[i] - sound[i + lag], 2);
      }
      sum += difference;
      normalised[lag] = difference / (sum / lag);
    }
    return normalised;
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

package hingetone.sound.level;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Signals and results are those of EBU Tech 3341 and ITU-R BS.1770-4. */
class LoudnessMeterTest {
  /** ITU-R BS.1770-4, tables 1 and 2: the filters at 48 kHz. */
  @Test
  void the_weighting_at_48_kilohertz_is_the_standards_own() {
    assertThat(LoudnessMeter.Weighting.shelf(48_000).coefficients())
        .containsExactly(
            new double[] {
              1.53512485958697,
              -2.69169618940638,
              1.19839281085285,
              -1.69065929318241,
              0.73248077421585
            },
            within(1e-10));
    assertThat(LoudnessMeter.Weighting.highPass(48_000).coefficients())
        .containsExactly(
            new double[] {1, -2, 1, -1.99004745483398, 0.99007225036621}, within(1e-10));
  }

  /** Tech 3341 cases 1 and 2: a 1 kHz stereo sine of −23 and −33 dBFS for 20 s, ±0.1 LU. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000, 96_000})
  void a_stereo_sine_measures_its_level(int sampleRate) {
    assertThat(loudness(sampleRate, 1, -23, 20)).isCloseTo(-23, within(0.1));
    assertThat(loudness(sampleRate, 1, -33, 20)).isCloseTo(-33, within(0.1));
  }

  /** BS.1770: one channel alone has half the power. */
  @Test
  void a_sine_in_one_channel_measures_three_units_less() {
    assertThat(loudness(44_100, 0, -23, 20)).isCloseTo(-26, within(0.1));
  }

  /** Tech 3341 case 3: −36, −23 and −36 dBFS for 10, 60 and 10 s. */
  @Test
  void quiet_stretches_are_gated_away() {
    assertThat(loudness(44_100, 1, -36, 10, -23, 60, -36, 10)).isCloseTo(-23, within(0.1));
  }

  /** Tech 3341 case 4: −72, −36, −23, −36 and −72 dBFS for 10, 10, 60, 10 and 10 s. */
  @Test
  void near_silence_is_gated_away_before_the_level_is_taken() {
    assertThat(loudness(44_100, 1, -72, 10, -36, 10, -23, 60, -36, 10, -72, 10))
        .isCloseTo(-23, within(0.1));
  }

  /** Tech 3341 case 5: −26, −20 and −26 dBFS for 20, 20.1 and 20 s. */
  @Test
  void a_loud_stretch_raises_the_whole() {
    assertThat(loudness(44_100, 1, -26, 20, -20, 20.1, -26, 20)).isCloseTo(-23, within(0.1));
  }

  @Test
  void silence_has_no_loudness() {
    LoudnessMeter meter = new LoudnessMeter(44_100);
    meter.add(new float[2 * 44_100], 44_100);
    assertThat(meter.integrated()).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  private static double loudness(int sampleRate, double right, double... levelsAndSeconds) {
    LoudnessMeter meter = new LoudnessMeter(sampleRate);
    for (int part = 0; part < levelsAndSeconds.length; part += 2) {
      double level = Math.pow(10, levelsAndSeconds[part] / 20);
      int frames = (int) Math.round(levelsAndSeconds[part + 1] * sampleRate);
      float[] stereo = new float[2 * frames];
      for (int i = 0; i < frames; i++) {
        double sine = level * Math.sin(2 * Math.PI * 1000 * i / sampleRate);
        stereo[2 * i] = (float) sine;
        stereo[2 * i + 1] = (float) (right * sine);
      }
      meter.add(stereo, frames);
    }
    return meter.integrated();
  }
}

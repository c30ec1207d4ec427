package hingetone.hearing.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ResamplerTest {
  @Test
  void a_tone_keeps_its_pitch_its_level_and_its_place_at_any_rate() {
    for (double rate : new double[] {8000, 22_050, 44_100, 48_000, 96_000}) {
      float[] out = resampled(sine(440, rate), rate);
      for (int i = 2000; i < 4000; i++) {
        double wanted = Math.sin(2 * Math.PI * 440 * i / Sampling.RATE);
        assertThat(out[i]).as("rate %.0f", rate).isCloseTo((float) wanted, within(0.01f));
      }
    }
  }

  @Test
  void what_the_new_rate_cannot_hold_is_taken_out() {
    float[] out = resampled(sine(15_000, 44_100), 44_100);
    for (int i = 2000; i < 4000; i++) {
      assertThat(Math.abs(out[i])).isLessThan(0.01f);
    }
  }

  @Test
  void blocks_make_no_difference() {
    float[] sound = sine(300, 44_100);
    Resampler resampler = new Resampler(44_100);
    float[] joined = {};
    for (int from = 0; from < sound.length; from += 777) {
      float[] block = Arrays.copyOfRange(sound, from, Math.min(sound.length, from + 777));
      joined = PluckedStrings.inTurn(joined, resampler.next(block));
    }
    joined = PluckedStrings.inTurn(joined, resampler.rest());
    assertThat(joined).isEqualTo(resampled(sound, 44_100));
  }

  private static float[] resampled(float[] sound, double rate) {
    Resampler resampler = new Resampler(rate);
    return PluckedStrings.inTurn(resampler.next(sound), resampler.rest());
  }

  private static float[] sine(double hertz, double rate) {
    float[] sine = new float[(int) rate / 4];
    for (int i = 0; i < sine.length; i++) {
      sine[i] = (float) Math.sin(2 * Math.PI * hertz * i / rate);
    }
    return sine;
  }
}

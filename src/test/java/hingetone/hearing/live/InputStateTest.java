package hingetone.hearing.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import org.junit.jupiter.api.Test;

class InputStateTest {
  private static InputState of(float[] sound) {
    InputState.Meter meter = new InputState.Meter();
    meter.take(sound);
    return meter.now();
  }

  private static float[] sine(double hertz, double amplitude) {
    float[] sine = PluckedStrings.tone(hertz, 0.5);
    float peak = 0;
    for (float sample : sine) {
      peak = Math.max(peak, Math.abs(sample));
    }
    for (int i = 0; i < sine.length; i++) {
      sine[i] *= (float) (amplitude / peak);
    }
    return sine;
  }

  @Test
  void a_string_has_its_note_and_cents() {
    for (double cents : new double[] {-30, -4, 0, 12}) {
      InputState state = of(sine(110 * Math.pow(2, cents / 1200), 0.3));
      assertThat(state.midi().orElseThrow()).isCloseTo(45 + cents / 100, within(0.02));
      assertThat(state.clips()).isFalse();
      assertThat(state.hums()).isFalse();
    }
  }

  @Test
  void soft_mains_is_hum_and_a_loud_low_note_is_not() {
    assertThat(of(sine(100, 0.02)).hums()).isTrue();
    assertThat(of(sine(120, 0.02)).hums()).isTrue();
    assertThat(of(sine(100, 0.5)).hums()).isFalse();
    assertThat(of(sine(82.4, 0.02)).hums()).isFalse();
  }

  @Test
  void full_scale_clips_once_and_silence_is_nothing() {
    InputState.Meter meter = new InputState.Meter();
    meter.take(sine(220, 1));
    assertThat(meter.now().clips()).isTrue();
    assertThat(meter.now().clips()).isFalse();
    assertThat(of(PluckedStrings.silence(1)).midi()).isEmpty();
  }
}

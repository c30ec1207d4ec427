package hingetone.hearing.live;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.hearing.live.DelayFinder.Delay;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DelayFinderTest {
  private static final int RATE = 44_100;

  @Test
  void a_click_is_found_on_its_sample_soft_upside_down_and_in_noise() {
    float[] click = DelayFinder.click(RATE);
    Random random = new Random(9);
    for (int place : new int[] {0, 1, 777, 9000, 19_000}) {
      for (double level : new double[] {1, 0.05, -0.2}) {
        float[] recording = new float[20_000];
        for (int i = 0; i < recording.length; i++) {
          recording[i] = (float) (Math.abs(level) * 0.05 * random.nextGaussian());
        }
        for (int i = 0; i < click.length; i++) {
          recording[place + i] += (float) (level * click[i]);
        }
        assertThat(DelayFinder.find(recording, click)).contains(place);
      }
    }
  }

  @Test
  void without_a_click_nothing_is_found() {
    float[] click = DelayFinder.click(RATE);
    float[] noise = new float[20_000];
    Random random = new Random(9);
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) (0.1 * random.nextGaussian());
    }
    assertThat(DelayFinder.find(noise, click)).isEmpty();
    assertThat(DelayFinder.find(new float[20_000], click)).isEmpty();
    assertThat(DelayFinder.find(new float[10], click)).isEmpty();
  }

  @Test
  void one_delay_that_is_far_off_does_not_move_the_middle() {
    Delay delay = Delay.of(List.of(31.0, 30.0, 30.5, 95.0, 30.2));
    assertThat(delay).isEqualTo(new Delay(30.5, 0.5));
  }
}

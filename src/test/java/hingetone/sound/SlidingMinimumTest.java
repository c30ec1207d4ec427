package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SlidingMinimumTest {
  @Test
  void it_is_the_smallest_of_one_and_the_values_of_the_window() {
    Random random = new Random(3);
    for (int window : new int[] {1, 2, 3, 7, 8, 9, 90}) {
      SlidingMinimum minimum = new SlidingMinimum(window);
      float[] values = new float[2000];
      for (int i = 0; i < values.length; i++) {
        // Every third stretch has no value below 1.
        boolean low = i / 150 % 3 > 0;
        values[i] = low ? random.nextInt(20) / 20f : 1 + random.nextFloat();
        float smallest = 1;
        for (int before = Math.max(0, i - window + 1); before <= i; before++) {
          smallest = Math.min(smallest, values[before]);
        }
        assertThat(minimum.next(values[i]))
            .as("window %d, value %d", window, i)
            .isEqualTo(smallest);
      }
    }
  }
}

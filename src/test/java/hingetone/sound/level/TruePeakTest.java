package hingetone.sound.level;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TruePeakTest {
  private static final int FRAMES = 200_000;
  private static final float LEVEL = 1;

  /** Turned so by chance, some runs of samples give a phase the most that it can make of them. */
  @Test
  void no_peak_above_the_level_is_passed_over() {
    Random random = new Random(7);
    float[] sound = new float[2 * FRAMES];
    for (int frame = 0; frame < FRAMES; frame++) {
      // Stretches of 500 frames, from ones that stay far below the level to ones just above.
      float size = 0.46f + 0.002f * (frame / 500 % 40);
      sound[2 * frame] = random.nextBoolean() ? size : -size;
      sound[2 * frame + 1] = random.nextBoolean() ? size : -size;
    }
    float[] everywhere = peaks(sound, 0, FRAMES);
    float[] where = peaks(sound, LEVEL, FRAMES);
    int above = 0;
    int passedOver = 0;
    for (int frame = 0; frame < FRAMES; frame++) {
      if (everywhere[frame] > LEVEL) {
        assertThat(where[frame]).as("frame %d", frame).isEqualTo(everywhere[frame]);
        above++;
      } else {
        assertThat(where[frame]).as("frame %d", frame).isLessThanOrEqualTo(everywhere[frame]);
        passedOver += where[frame] < everywhere[frame] ? 1 : 0;
      }
    }
    assertThat(above).isPositive();
    assertThat(passedOver).isPositive();
  }

  @Test
  void the_blocks_that_a_sound_comes_in_change_nothing() {
    Random random = new Random(8);
    float[] sound = new float[2 * 5000];
    for (int i = 0; i < sound.length; i++) {
      sound[i] = 2 * random.nextFloat() - 1;
    }
    float[] whole = peaks(sound, 0, 5000);
    for (int block : new int[] {1, 7, 63, 64, 65, 1000}) {
      assertThat(peaks(sound, 0, block)).as("blocks of %d", block).isEqualTo(whole);
    }
  }

  private static float[] peaks(float[] sound, float above, int block) {
    TruePeak truePeak = new TruePeak();
    int frames = sound.length / 2;
    float[] all = new float[frames];
    float[] some = new float[block];
    for (int from = 0; from < frames; from += block) {
      int count = Math.min(block, frames - from);
      float[] stereo = new float[2 * count];
      System.arraycopy(sound, 2 * from, stereo, 0, 2 * count);
      truePeak.next(stereo, count, above, some);
      System.arraycopy(some, 0, all, from, count);
    }
    return all;
  }
}

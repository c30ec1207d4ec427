package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.sequencer.PlaySetup;
import hingetone.sound.level.PeakMeter;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LimiterTest {
  private static final int SAMPLE_RATE = 44_100;

  @Test
  void what_stays_below_the_ceiling_passes_unchanged_only_later() {
    Limiter limiter = new Limiter(SAMPLE_RATE, -1);
    float[] sound = noise(new Random(1), 5000, 0.4f);
    float[] limited = limited(limiter, sound);
    int delay = limiter.delayFrames();
    for (int i = 0; i < 2 * (5000 - delay); i++) {
      assertThat(limited[2 * delay + i]).isEqualTo(sound[i]);
    }
    for (int i = 0; i < 2 * delay; i++) {
      assertThat(limited[i]).isZero();
    }
  }

  @Test
  void no_true_peak_passes_the_ceiling_whatever_comes_in() {
    for (long seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      float[] sound = noise(random, 40_000, 0.5f);
      for (int burst = 0; burst < 40; burst++) {
        int start = 2 * random.nextInt(39_000);
        float factor = 1 + 20 * random.nextFloat();
        for (int i = 0; i < 2 * random.nextInt(900); i++) {
          sound[start + i] *= factor;
        }
      }
      PeakMeter meter = new PeakMeter();
      float[] limited = limited(new Limiter(SAMPLE_RATE, -1.3), sound);
      meter.add(limited, limited.length / 2);
      assertThat(meter.truePeak()).as("seed " + seed).isLessThan(-1);
    }
  }

  @Test
  void the_gain_never_jumps() {
    float[] sound = new float[2 * 44_100];
    for (int i = 0; i < 44_100; i++) {
      // A tone that is loud for a tenth of a second, its level stepping at a zero crossing.
      double level = i >= 8820 && i < 13_230 ? 4 : 0.5;
      sound[2 * i] = (float) (level * Math.sin(2 * Math.PI * 50 * i / 44_100.0));
      sound[2 * i + 1] = sound[2 * i];
    }
    Limiter limiter = new Limiter(SAMPLE_RATE, -1);
    float[] limited = limited(limiter, sound);
    double last = 1;
    for (int i = 0; i < 44_100 - limiter.delayFrames(); i++) {
      if (Math.abs(sound[2 * i]) > 0.01) {
        double gain = limited[2 * (i + limiter.delayFrames())] / sound[2 * i];
        assertThat(gain).isCloseTo(last, within(0.06));
        last = gain;
      }
    }
  }

  @Test
  void the_sum_of_the_volume_and_its_fade_never_steps() {
    Volume volume = new Volume(SAMPLE_RATE, PlaySetup.MODERATE_VOLUME);
    float[] ones = new float[2 * SAMPLE_RATE];
    java.util.Arrays.fill(ones, 1);
    volume.apply(ones, SAMPLE_RATE / 2);
    volume.set(100);
    float[] rest = new float[SAMPLE_RATE];
    java.util.Arrays.fill(rest, 1);
    volume.apply(rest, SAMPLE_RATE / 2);
    System.arraycopy(rest, 0, ones, SAMPLE_RATE, SAMPLE_RATE);
    float before = 0;
    for (int i = 0; i < SAMPLE_RATE; i++) {
      assertThat(Math.abs(ones[2 * i] - before)).isLessThan(0.0005f);
      before = ones[2 * i];
    }
    assertThat(ones[SAMPLE_RATE - 2]).isEqualTo(Volume.gain(PlaySetup.MODERATE_VOLUME));
    assertThat(before).isEqualTo(1);
  }

  private static float[] noise(Random random, int frames, float level) {
    float[] stereo = new float[2 * frames];
    for (int i = 0; i < stereo.length; i++) {
      stereo[i] = level * (2 * random.nextFloat() - 1);
    }
    return stereo;
  }

  /** Limits a copy, in blocks of uneven size. */
  private static float[] limited(Limiter limiter, float[] sound) {
    float[] out = new float[sound.length];
    int done = 0;
    for (int size = 1; done < sound.length / 2; size = size % 700 + 13) {
      int frames = Math.min(size, sound.length / 2 - done);
      float[] block = new float[2 * frames];
      System.arraycopy(sound, 2 * done, block, 0, 2 * frames);
      limiter.apply(block, frames);
      System.arraycopy(block, 0, out, 2 * done, 2 * frames);
      done += frames;
    }
    return out;
  }
}

package hingetone.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** What Verhelst and Roelands (1993) ask of it: longer, and the short-time pitch as it was. */
class TimeStretchTest {
  private static final int RATE = 22_050;

  private static float[] plucks(double hertz) {
    float[] sound = new float[RATE];
    for (int i = 0; i < sound.length; i++) {
      double t = (double) i / RATE;
      double fade = Math.exp(-3 * (t % 0.5));
      for (int k = 1; k <= 4; k++) {
        sound[i] += (float) (0.2 / k * fade * Math.sin(2 * Math.PI * k * hertz * t));
      }
    }
    return sound;
  }

  /** By the mean distance of rising zero crossings, the harmonics being in phase. */
  private static double hertz(float[] sound, int from, int to) {
    double first = -1;
    double last = -1;
    int count = -1;
    for (int i = from + 1; i < to; i++) {
      if (sound[i - 1] < 0 && sound[i] >= 0) {
        last = i - sound[i] / (sound[i] - sound[i - 1]);
        first = first < 0 ? last : first;
        count++;
      }
    }
    return count * RATE / (last - first);
  }

  @Test
  void it_lasts_so_many_times_as_long_at_the_same_pitch() {
    for (double times : new double[] {1, 1.25, 1.7, 2, 4}) {
      for (double pitch : new double[] {110, 220, 523.25}) {
        float[] slow = TimeStretch.of(plucks(pitch), RATE, times);
        assertThat(slow).hasSize((int) Math.round(RATE * times));
        int from = (int) (0.1 * RATE * times);
        int to = (int) (0.45 * RATE * times);
        assertThat(hertz(slow, from, to))
            .as("%s times", times)
            .isCloseTo(pitch, within(0.01 * pitch));
      }
    }
  }

  @Test
  void it_stays_as_loud_and_a_stroke_comes_where_it_belongs() {
    float[] sound = plucks(220);
    float[] slow = TimeStretch.of(sound, RATE, 2);
    assertThat(loudness(slow, 0.2, 0.8)).isCloseTo(loudness(sound, 0.1, 0.4), within(0.02));
    assertThat(loudness(slow, 0.9, 0.98)).isLessThan(loudness(slow, 1.03, 1.1) / 2);
  }

  @Test
  void at_its_own_speed_it_is_the_same_sound() {
    float[] sound = plucks(330);
    float[] same = TimeStretch.of(sound, RATE, 1);
    for (int i = 0; i < sound.length; i++) {
      assertThat(same[i]).isCloseTo(sound[i], within(1e-4f));
    }
  }

  private static double loudness(float[] sound, double from, double to) {
    double sum = 0;
    int count = 0;
    for (int i = (int) (from * RATE); i < to * RATE; i++, count++) {
      sum += sound[i] * sound[i];
    }
    return Math.sqrt(sum / count);
  }
}

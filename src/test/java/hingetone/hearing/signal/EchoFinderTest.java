package hingetone.hearing.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hingetone.hearing.PluckedStrings;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EchoFinderTest {
  private static final int DELAY = 7001;

  @Test
  void echoes_are_found_and_taken_out() {
    float[] dry = line();
    float[] wet = withEchoes(dry, 0.5, 0.3);
    EchoFilter filter = finder(wet).found().orElseThrow();
    assertThat(filter.delay()).isCloseTo((double) DELAY / Sampling.RATE, within(1e-3));
    assertThat(distance(dry, filter.next(wet))).isLessThan(0.1 * distance(dry, wet));
  }

  @Test
  void a_sound_without_echoes_is_left_alone() {
    assertThat(finder(line()).found()).isEqualTo(Optional.empty());
    assertThat(finder(new float[0]).found()).isEqualTo(Optional.empty());
    assertThat(finder(new float[200_000]).found()).isEqualTo(Optional.empty());
  }

  private static EchoFinder finder(float[] sound) {
    EchoFinder finder = new EchoFinder();
    finder.take(sound);
    return finder;
  }

  /** Strings plucked at uneven times, each with noise of its own. */
  private static float[] line() {
    float[] line = {};
    int[] keys = {52, 57, 55, 60, 64, 62, 59, 57, 50, 52, 55, 53, 67, 64, 60, 59};
    for (int i = 0; i < keys.length; i++) {
      double seconds = 0.31 + 0.07 * (i * i % 5);
      line =
          PluckedStrings.inTurn(line, PluckedStrings.plucked(Sampling.hertz(keys[i]), seconds, i));
    }
    return line;
  }

  private static float[] withEchoes(float[] dry, double strength, double again) {
    float[] wet = dry.clone();
    float[] echo = new float[dry.length];
    for (int i = DELAY; i < dry.length; i++) {
      echo[i] = (float) (dry[i - DELAY] + again * echo[i - DELAY]);
      wet[i] += (float) (strength * echo[i]);
    }
    return wet;
  }

  private static double distance(float[] a, float[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return Math.sqrt(sum);
  }
}

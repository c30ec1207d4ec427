package hingetone.sound.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RelayTest {
  private static final int GIVEN = 300;
  private static final int TIMES = 1000;

  @Test
  void everything_is_taken_once_and_in_order() throws IOException {
    List<Float> taken = new ArrayList<>();
    try (Relay relay = new Relay((stereo, frames) -> add(taken, stereo, frames))) {
      for (int time = 0; time < TIMES; time++) {
        relay.give(counting(time), GIVEN);
      }
      relay.finish();
    }
    assertThat(taken).hasSize(2 * GIVEN * TIMES);
    for (int i = 0; i < taken.size(); i++) {
      assertThat(taken.get(i)).isEqualTo(i);
    }
  }

  @Test
  void what_the_taker_throws_reaches_the_giver() {
    assertThatThrownBy(
            () -> {
              try (Relay relay = new Relay(RelayTest::full)) {
                relay.give(counting(0), GIVEN);
                relay.finish();
              }
            })
        .isInstanceOf(IOException.class)
        .hasMessage("disk full");
  }

  @Test
  void a_giver_who_goes_on_for_long_is_stopped_by_what_the_taker_throws() {
    assertThatThrownBy(
            () -> {
              try (Relay relay = new Relay(RelayTest::full)) {
                for (int time = 0; time < TIMES; time++) {
                  relay.give(counting(time), GIVEN);
                }
              }
            })
        .isInstanceOf(IOException.class)
        .hasMessage("disk full");
  }

  private static void full(float[] stereo, int frames) throws IOException {
    throw new IOException("disk full");
  }

  private static float[] counting(int time) {
    float[] stereo = new float[2 * GIVEN];
    for (int i = 0; i < stereo.length; i++) {
      stereo[i] = (float) time * stereo.length + i;
    }
    return stereo;
  }

  private static void add(List<Float> taken, float[] stereo, int frames) {
    for (int i = 0; i < 2 * frames; i++) {
      taken.add(stereo[i]);
    }
  }
}

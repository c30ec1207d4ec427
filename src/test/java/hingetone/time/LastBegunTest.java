package hingetone.time;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LastBegunTest {
  @Test
  void it_is_the_last_up_to_which_all_have_begun_for_every_count_and_every_place() {
    for (int count = 0; count <= 40; count++) {
      for (int last = -1; last < count; last++) {
        int expected = last;
        assertThat(LastBegun.index(count, i -> i <= expected)).isEqualTo(expected);
      }
    }
  }
}

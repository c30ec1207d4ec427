package hingetone.time;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.time.Playhead.Stretch;
import org.junit.jupiter.api.Test;

class PlayheadTest {
  private final Playhead playhead = new Playhead();

  private String at(long nanos) {
    return playhead.at(nanos).position().toString();
  }

  @Test
  void before_anything_was_said_it_stands_at_the_top() {
    assertThat(at(12345)).isEqualTo("bar 1 beat 1");
    assertThat(playhead.at(0).moving()).isFalse();
  }

  @Test
  void a_bar_is_walked_through_evenly_and_never_left_before_the_next_begins() {
    playhead.enter(new Stretch(1000, 1, 3, 1, 4, 100));
    assertThat(at(1000)).isEqualTo("bar 3 beat 1");
    assertThat(at(1150)).isEqualTo("bar 3 beat 2+1/2");
    assertThat(playhead.at(9999).position().beat()).isLessThan(Beats.of(5));
    playhead.enter(new Stretch(1400, 1, 4, 1, 3, 200));
    assertThat(at(1399)).startsWith("bar 3 beat 4+");
    assertThat(at(1400)).isEqualTo("bar 4 beat 1");
    assertThat(at(1600)).isEqualTo("bar 4 beat 2");
  }

  @Test
  void what_is_heard_lags_behind_what_was_written() {
    playhead.enter(new Stretch(0, 1, 1, 1, 4, 100));
    playhead.hearAfter(5000);
    assertThat(at(5100)).isEqualTo("bar 1 beat 2");
    assertThat(playhead.heardAt(100)).isEqualTo(5100);
  }

  @Test
  void a_later_word_replaces_what_was_said_about_the_time_after_it() {
    playhead.enter(new Stretch(0, 1, 1, 1, 4, 100));
    playhead.enter(new Stretch(400, 1, 2, 1, 4, 100));
    playhead.enter(new Stretch(250, 1, 1, 3.5, 4, 0));
    assertThat(at(9000)).isEqualTo("bar 1 beat 3+1/2");
    assertThat(playhead.at(9000).moving()).isFalse();
    assertThat(at(200)).isEqualTo("bar 1 beat 3");
  }

  @Test
  void something_stamped_a_while_ago_can_still_be_placed() {
    for (int bar = 1; bar <= 100; bar++) {
      playhead.enter(new Stretch(bar * 400L, 1, bar, 1, 4, 100));
    }
    assertThat(at(40 * 400 + 100)).isEqualTo("bar 40 beat 2");
  }
}

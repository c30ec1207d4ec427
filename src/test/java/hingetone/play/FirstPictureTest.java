package hingetone.play;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FirstPictureTest {
  @Test
  void the_picture_that_nobody_sees_is_a_whole_one() {
    assertThat(FirstPicture.draw()).contains("Nobody sees this", "Cm7", "statement");
  }
}

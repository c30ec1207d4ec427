package hingetone.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DrumLaneTest {
  private static final Map<Character, Integer> SIGNS = Map.of('X', 120, 'x', 90, 'g', 30);

  @Test
  void each_sign_is_one_step() {
    List<Note> notes = DrumLane.strokes("X.g.x..g", 38, Beats.of(1, 4), SIGNS);
    assertThat(notes)
        .containsExactly(
            new Note(Beats.ZERO, Beats.of(1, 4), 38, 120),
            new Note(Beats.of(1, 2), Beats.of(1, 4), 38, 30),
            new Note(Beats.of(1), Beats.of(1, 4), 38, 90),
            new Note(Beats.of(7, 4), Beats.of(1, 4), 38, 30));
  }

  @Test
  void a_step_of_any_length_is_exact() {
    List<Note> notes = DrumLane.strokes("..x", 42, Beats.of(1, 3), SIGNS);
    assertThat(notes).containsExactly(new Note(Beats.of(2, 3), Beats.of(1, 3), 42, 90));
  }

  @Test
  void every_percussion_key_keeps_its_number() {
    for (int key = 27; key <= 87; key++) {
      assertThat(DrumLane.strokes("x", key, Beats.ONE, SIGNS).get(0).key()).isEqualTo(key);
    }
  }

  @Test
  void a_lane_without_strokes_is_empty() {
    assertThat(DrumLane.strokes("....", 42, Beats.ONE, SIGNS)).isEmpty();
  }

  @Test
  void a_sign_without_a_meaning_is_a_mistake_of_the_caller() {
    assertThatThrownBy(() -> DrumLane.strokes("x?", 42, Beats.ONE, SIGNS))
        .isInstanceOf(IllegalArgumentException.class);
  }
}

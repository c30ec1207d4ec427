package hingetone.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import hingetone.time.Beats;
import hingetone.time.Meter;
import hingetone.time.Tempo;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScoreTest {
  @Test
  void notes_and_marks_are_kept_in_order_of_time() {
    Note late = new Note(Beats.of(2), Beats.ONE, 40, 90);
    Note early = new Note(Beats.ZERO, Beats.ONE, 45, 90);
    Mark tempo = new Mark.OfTempo(Beats.of(4), Tempo.of(90));
    Mark meter = new Mark.OfMeter(Beats.ZERO, Meter.COMMON);
    Part bass = new Part(Role.BASS, Sound.of(33), List.of(late, early));
    Score score = new Score("Quay", Beats.of(4), Beats.of(8), List.of(tempo, meter), List.of(bass));

    assertThat(score.part(Role.BASS).orElseThrow().notes()).containsExactly(early, late);
    assertThat(score.marks()).containsExactly(meter, tempo);
    assertThat(score.marks(Mark.OfTempo.class)).containsExactly((Mark.OfTempo) tempo);
    assertThat(score.part(Role.DRUMS)).isEmpty();
  }

  @Test
  void what_midi_cannot_say_is_refused() {
    assertThatThrownBy(() -> new Note(Beats.ZERO, Beats.ZERO, 60, 90))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Note(Beats.ZERO, Beats.ONE, 128, 90))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Note(Beats.ZERO, Beats.ONE, 60, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Sound(128, 0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
  }
}

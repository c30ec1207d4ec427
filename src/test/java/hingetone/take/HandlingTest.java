package hingetone.take;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.hearing.Technique;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class HandlingTest {
  private static Handling of(double struck, double... pitches) {
    List<Handling.Point> curve = new ArrayList<>();
    for (double pitch : pitches) {
      curve.add(new Handling.Point(curve.size() / 10.0, pitch));
    }
    return Handling.of(struck, curve);
  }

  @Test
  void a_pitch_that_moves_tells_how_the_string_was_bent() {
    assertThat(of(60).technique()).isEqualTo(Technique.PLAIN);
    assertThat(of(60, 60.1, 60).technique()).isEqualTo(Technique.PLAIN);
    assertThat(of(60, 60.3, 60.4).technique()).isEqualTo(Technique.CURL);
    assertThat(of(60, 61, 62).technique()).isEqualTo(Technique.BEND);
    assertThat(of(60, 61, 62, 60).technique()).isEqualTo(Technique.RELEASE);
    assertThat(of(62, 61, 60).technique()).isEqualTo(Technique.PREBEND);
  }

  @Test
  void a_pitch_that_swings_has_vibrato() {
    assertThat(of(60, 60.2, 59.9, 60.2, 59.9, 60.2, 60).vibrato()).isTrue();
    assertThat(of(60, 62, 61.8, 62, 61.8, 62, 61.8).vibrato()).isTrue();
    assertThat(of(60, 61, 62, 60).vibrato()).isFalse();
  }
}

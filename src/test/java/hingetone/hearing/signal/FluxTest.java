package hingetone.hearing.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Böck and Widmer (2013): a maximum filter over the bands before leaves vibrato out. */
class FluxTest {
  private static final double FLOOR = 1e-3;
  private static final int LAG = 3;

  private final Spectrum spectrum = new Spectrum(1024);

  @Test
  void the_first_frames_have_nothing_before_them() {
    assertThat(rises(frame(60), frame(60), frame(60))).containsExactly(0f, 0f, 0f);
  }

  @Test
  void what_stays_or_fades_is_not_new() {
    assertThat(rises(frame(60), frame(60), frame(60), frame(60), frame())).containsOnly(0f);
  }

  @Test
  void a_partial_that_sways_to_the_next_band_is_not_new_and_one_that_leaps_is() {
    List<Float> swaying = rises(frame(300), frame(300), frame(300), frame(301), frame(299));
    assertThat(swaying).allSatisfy(rise -> assertThat(rise).isCloseTo(0, within(0.1f)));
    List<Float> leaping = rises(frame(100), frame(100), frame(100), frame(300));
    assertThat(leaping.get(LAG)).isGreaterThan(1.5f);
  }

  /** A magnitude of 1 in a band of its own, over the floor: log10(1 + 1/floor) decades. */
  @Test
  void a_new_partial_counts_its_decades_above_the_floor() {
    double decades = Math.log10(1 + 1 / FLOOR);
    assertThat(rises(frame(), frame(), frame(), frame(6)).get(LAG))
        .isCloseTo((float) decades, within(0.01f));
  }

  private List<Float> rises(float[]... frames) {
    Flux flux = new Flux(spectrum);
    List<Float> rises = new ArrayList<>();
    for (float[] frame : frames) {
      rises.add(flux.next(frame, FLOOR).all());
    }
    return rises;
  }

  /** Magnitude 1 in some bins. */
  private static float[] frame(int... bins) {
    float[] magnitudes = new float[513];
    for (int bin : bins) {
      magnitudes[bin] = 1;
    }
    return magnitudes;
  }
}

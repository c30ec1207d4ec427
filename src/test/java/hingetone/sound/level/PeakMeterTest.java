package hingetone.sound.level;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Against the minimum requirements that EBU Tech 3341 sets for a meter. */
class PeakMeterTest {
  /**
   * Tech 3341 case 16: a sine of a quarter of the sample rate with its phase at 45°, whose samples
   * lie 3 dB below its true peak of −6 dBTP; +0.2 to −0.4 dB.
   */
  @Test
  void the_true_peak_lies_between_the_samples() {
    PeakMeter meter = new PeakMeter();
    float[] stereo = new float[2 * 4800];
    for (int i = 0; i < 4800; i++) {
      stereo[2 * i] = (float) (0.5 * Math.sin(Math.PI / 2 * i + Math.PI / 4));
      stereo[2 * i + 1] = stereo[2 * i];
    }
    meter.add(stereo, 4800);
    assertThat(meter.truePeak()).isBetween(-6.4, -5.8);
  }

  @Test
  void silence_has_no_peak() {
    PeakMeter meter = new PeakMeter();
    meter.add(new float[2 * 44_100], 44_100);
    assertThat(meter.truePeak()).isEqualTo(Double.NEGATIVE_INFINITY);
  }
}

package hingetone.hearing.live;

import hingetone.hearing.signal.RecentSamples;
import hingetone.hearing.signal.Sampling;
import java.util.Optional;

/**
 * What an input hears at a moment, for setting it up and for tuning.
 *
 * @param decibels its level over the last tenth of a second, to full scale
 * @param clips whether it reached full scale
 * @param midi the pitch heard, a MIDI number with fractions; empty for none
 * @param hums whether what is heard is the mains: 50 or 60 Hz, or their doubles, and soft
 */
public record InputState(double decibels, boolean clips, Optional<Double> midi, boolean hums) {
  private static final double FULL = 0.99;
  private static final double SOFTEST_DB = -60;
  private static final double LOUDEST_HUM_DB = -30;
  private static final double[] MAINS = {50, 60, 100, 120};
  private static final double NEAR_CENTS = 35;

  /** Hears sound that comes in blocks. */
  public static final class Meter {
    private static final int STRETCH = 2048;

    private final RecentSamples tape = new RecentSamples(1 << 13);
    private float peak;

    /** Takes more sound, at {@link Sampling#RATE}, ±1. */
    public void take(float[] samples) {
      tape.add(samples, samples.length);
      for (float sample : samples) {
        peak = Math.max(peak, Math.abs(sample));
      }
    }

    /** What is heard now; whether it clips since it was asked last. */
    public InputState now() {
      float[] last = new float[STRETCH];
      tape.copy(tape.end() - STRETCH, last);
      double energy = 0;
      for (float sample : last) {
        energy += sample * sample;
      }
      double level = Sampling.decibels(Math.sqrt(energy / STRETCH));
      Optional<Double> midi = level < SOFTEST_DB ? Optional.empty() : FirstHearing.pitch(last);
      boolean clips = peak >= FULL;
      peak = 0;
      return new InputState(
          level,
          clips,
          midi,
          level < LOUDEST_HUM_DB && midi.filter(InputState::isMains).isPresent());
    }
  }

  private static boolean isMains(double midi) {
    for (double hertz : MAINS) {
      if (Math.abs(midi - Sampling.midi(hertz)) * 100 < NEAR_CENTS) {
        return true;
      }
    }
    return false;
  }
}

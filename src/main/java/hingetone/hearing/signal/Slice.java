package hingetone.hearing.signal;

import java.util.Optional;

/**
 * What is measured at one moment of a sound.
 *
 * @param pitch its pitch, if it has one
 * @param level in dB, a full-scale sine being −3
 * @param flux what is new in its spectrum
 * @param bright what is new above {@value Flux#BRIGHT_HERTZ} Hz
 * @param magnitudes its spectrum
 * @param floor the magnitude below which nothing counts
 */
public record Slice(
    Optional<Yin.Candidate> pitch,
    double level,
    float flux,
    float bright,
    float[] magnitudes,
    double floor) {
  /** Below half of the thresholds of {@link Yin}. */
  private static final double CLEAR_BELOW = 0.1;

  /** What is this far from periodic has no pitch. */
  private static final double UNVOICED_FROM = 0.6;

  Slice withPitch(Optional<Yin.Candidate> found) {
    return new Slice(found, level, flux, bright, magnitudes, floor);
  }

  public boolean voiced() {
    return dip() < UNVOICED_FROM;
  }

  /** Whether its pitch is beyond doubt. */
  public boolean clear() {
    return dip() < CLEAR_BELOW;
  }

  /** MIDI number with fractions; not a number where there is no pitch. */
  public double midi() {
    return voiced() ? pitch.get().midi() : Double.NaN;
  }

  /** How far it is from periodic: 0 perfectly, 1 not at all. */
  public double dip() {
    return pitch.map(Yin.Candidate::dip).orElse(1.0);
  }
}

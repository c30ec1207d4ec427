package hingetone.hearing.signal;

/** The one rate at which everything listens, and how its frames lie. */
public final class Sampling {
  /** Samples a second that the ear takes. */
  public static final int RATE = 22_050;

  /** Samples from one frame to the next: 5.8 ms. */
  public static final int HOP = 128;

  /** Slices a second. */
  public static final double FRAME_RATE = (double) RATE / HOP;

  private Sampling() {}

  /** How many frames a time takes, rounded. */
  public static int frames(double seconds) {
    return (int) Math.round(seconds * FRAME_RATE);
  }

  /** MIDI number, with fractions, of a frequency: 69 is 440 Hz (ISO 16). */
  public static double midi(double hertz) {
    return 69 + 12 * Math.log(hertz / 440) / Math.log(2);
  }

  /** Frequency of a MIDI number with fractions. */
  public static double hertz(double midi) {
    return 440 * Math.pow(2, (midi - 69) / 12);
  }

  public static double decibels(double amplitude) {
    return 20 * Math.log10(Math.max(amplitude, 1e-7));
  }
}

package hingetone.sound;

/** Signed 16-bit little-endian samples, as sound lines and WAV files take them. */
public final class Pcm16 {
  static final int FRAME_BYTES = 4;

  private Pcm16() {}

  /**
   * Writes interleaved stereo as 16-bit samples: rounded to the nearest step without dither, and
   * held at full scale where a sample lies beyond it.
   */
  public static void encode(float[] stereo, int frames, byte[] into) {
    for (int i = 0; i < 2 * frames; i++) {
      int value = Math.round(stereo[i] * 32768);
      value = Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, value));
      into[2 * i] = (byte) value;
      into[2 * i + 1] = (byte) (value >> 8);
    }
  }
}

package hingetone.hearing;

import hingetone.hearing.signal.Sampling;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Sounds of plucked strings and tones, made by formula, for the tests. */
public final class PluckedStrings {
  static final int RATE = Sampling.RATE;

  private PluckedStrings() {}

  public static float[] silence(double seconds) {
    return new float[(int) (seconds * RATE)];
  }

  /** A tone of ten harmonics whose strengths fall as 1/k. */
  public static float[] tone(double hertz, double seconds) {
    return gliding(t -> hertz, seconds, 0);
  }

  /**
   * A string that is picked: harmonics that die away, the upper ones sooner, and the noise of the
   * plectrum; its pitch moves as a function of the time says.
   */
  public static float[] picked(DoubleUnaryOperator midi, double seconds) {
    float[] sound = gliding(t -> Sampling.hertz(midi.applyAsDouble(t)), seconds, 1.5);
    Random noise = new Random(5);
    for (int i = 0; i < RATE / 150; i++) {
      sound[i] += (float) (0.1 * noise.nextGaussian() * (1 - i * 150.0 / RATE));
    }
    return sound;
  }

  private static float[] gliding(DoubleUnaryOperator hertz, double seconds, double decay) {
    float[] sound = silence(seconds);
    double phase = 0;
    for (int i = 0; i < sound.length; i++) {
      double t = (double) i / RATE;
      double now = hertz.applyAsDouble(t);
      phase += 2 * Math.PI * now / RATE;
      double sum = 0;
      for (int k = 1; k <= 10 && k * now < RATE / 2.0; k++) {
        sum += Math.sin(k * phase) / k * Math.exp(-decay * t * Math.sqrt(k));
      }
      double fade = Math.min(1, Math.min(i, sound.length - i) / 60.0);
      sound[i] = (float) (0.25 * fade * sum);
    }
    return sound;
  }

  /**
   * A plucked string by Karplus and Strong (Computer Music Journal 7, 1983), tuned between samples
   * by the allpass of Jaffe and Smith (same issue).
   */
  public static float[] plucked(double hertz, double seconds, long seed) {
    double period = RATE / hertz;
    int length = (int) (period - 0.6);
    double rest = period - length - 0.5;
    double allpass = (1 - rest) / (1 + rest);
    float[] string = new float[length];
    Random noise = new Random(seed);
    for (int i = 0; i < length; i++) {
      string[i] = noise.nextBoolean() ? 0.4f : -0.4f;
    }
    float[] sound = silence(seconds);
    double before = 0;
    double lastIn = 0;
    double lastOut = 0;
    for (int i = 0; i < sound.length; i++) {
      double out = string[i % length];
      double mean = 0.5 * (out + before);
      before = out;
      double tuned = allpass * mean + lastIn - allpass * lastOut;
      lastIn = mean;
      lastOut = tuned;
      string[i % length] = (float) tuned;
      sound[i] = (float) out;
    }
    return sound;
  }

  /** One sound after the other. */
  public static float[] inTurn(float[]... sounds) {
    int length = 0;
    for (float[] sound : sounds) {
      length += sound.length;
    }
    float[] all = new float[length];
    int at = 0;
    for (float[] sound : sounds) {
      System.arraycopy(sound, 0, all, at, sound.length);
      at += sound.length;
    }
    return all;
  }

  /** White noise that lies some decibels below a sound, added to it. */
  public static float[] withNoise(float[] sound, double decibelsBelow) {
    double energy = 0;
    for (float sample : sound) {
      energy += sample * sample;
    }
    double size = Math.sqrt(energy / sound.length) * Math.pow(10, -decibelsBelow / 20);
    Random noise = new Random(3);
    float[] noisy = sound.clone();
    for (int i = 0; i < noisy.length; i++) {
      noisy[i] += (float) (size * noise.nextGaussian());
    }
    return noisy;
  }
}

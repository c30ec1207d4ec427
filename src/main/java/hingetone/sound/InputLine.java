package hingetone.sound;

import hingetone.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/**
 * A sound input: gives one channel block by block and knows at which moment each sample came in, as
 * far as the device tells. What lies before it, a converter and its driver, it cannot know.
 *
 * <p>One thread reads; any may close.
 */
public final class InputLine implements AutoCloseable {
  /** Samples a block: 11.6 ms at 44,100 a second. */
  public static final int BLOCK = 512;

  private static final int BUFFER_FRAMES = 4096;
  private static final double MOST_DRIFT = 1e-4;

  private final TargetDataLine line;
  private final Clock clock;
  private final int channel;
  private final int channels;
  private final int rate;
  private final byte[] bytes;
  private long read;

  /** The clock when sample 0 came in: the smallest seen, as every wait only adds to it. */
  private double origin = Double.MAX_VALUE;

  private long askedAt;

  /**
   * How to open an input.
   *
   * @param device part of its name, in either case; empty for the system's own choice
   * @param channel which of its channels, from 1
   */
  public record Settings(Optional<String> device, int channel) {}

  private InputLine(TargetDataLine line, Clock clock, int channel) {
    this.line = line;
    this.clock = clock;
    this.channel = channel;
    this.channels = line.getFormat().getChannels();
    this.rate = (int) line.getFormat().getSampleRate();
    this.bytes = new byte[BLOCK * channels * 2];
  }

  /** The names of the inputs found. */
  public static List<String> devices() {
    List<String> found = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (AudioSystem.getMixer(info)
          .isLineSupported(new DataLine.Info(TargetDataLine.class, null))) {
        found.add(info.getName());
      }
    }
    return found;
  }

  /**
   * Opens an input and starts it, at 44,100 samples a second or, where it has only that, 48,000.
   *
   * @throws SoundFailure when there is no such input, or it is taken
   */
  public static InputLine open(Settings settings, Clock clock) throws SoundFailure {
    Optional<Mixer.Info> mixer =
        settings.device().isPresent()
            ? Optional.of(mixer(settings.device().get()))
            : Optional.empty();
    for (int rate : new int[] {44_100, 48_000}) {
      for (int channels = settings.channel();
          channels <= Math.max(2, settings.channel());
          channels++) {
        Optional<TargetDataLine> line =
            line(mixer, new AudioFormat(rate, 16, channels, true, false));
        if (line.isPresent()) {
          return new InputLine(line.get(), clock, settings.channel());
        }
      }
    }
    throw new SoundFailure(
        devices().isEmpty()
            ? "No sound input was found: plug in an interface or a microphone (on Linux PulseAudio or"
                + " PipeWire must run); hingetone ports lists them."
            : "The sound input cannot be opened: it is taken by another program, or has no channel "
                + settings.channel()
                + ".");
  }

  private static Mixer.Info mixer(String part) throws SoundFailure {
    String wanted = part.toLowerCase(Locale.ROOT);
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      boolean named = info.getName().toLowerCase(Locale.ROOT).contains(wanted);
      if (named && devices().contains(info.getName())) {
        return info;
      }
    }
    throw new SoundFailure("No sound input is called '" + part + "'; hingetone ports lists them.");
  }

  private static Optional<TargetDataLine> line(Optional<Mixer.Info> mixer, AudioFormat format) {
    try {
      TargetDataLine line =
          mixer.isPresent()
              ? AudioSystem.getTargetDataLine(format, mixer.get())
              : AudioSystem.getTargetDataLine(format);
      line.open(format, BUFFER_FRAMES * format.getFrameSize());
      line.start();
      return Optional.of(line);
    } catch (LineUnavailableException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** Samples a second. */
  public int sampleRate() {
    return rate;
  }

  /**
   * Waits for the next block of the channel, ±1.
   *
   * @return empty when the input has ended or is gone
   */
  public Optional<float[]> read() {
    int got;
    try {
      got = line.read(bytes, 0, bytes.length);
    } catch (RuntimeException e) {
      // A driver whose device has gone throws whatever it likes.
      got = 0;
    }
    if (got < bytes.length) {
      return Optional.empty();
    }
    float[] samples = new float[BLOCK];
    for (int i = 0; i < BLOCK; i++) {
      int at = 2 * (i * channels + channel - 1);
      samples[i] = (short) (bytes[at] & 0xFF | bytes[at + 1] << 8) / 32768f;
    }
    read += BLOCK;
    observe();
    return Optional.of(samples);
  }

  /** Every wait makes a block late and none makes it early, so the earliest is the truest. */
  private void observe() {
    long now = clock.nanos();
    double waiting = (double) line.available() / line.getFormat().getFrameSize();
    double seen = now - (read + waiting) / rate * 1e9;
    double drifted = origin == Double.MAX_VALUE ? seen : origin + MOST_DRIFT * (now - askedAt);
    origin = Math.min(seen, drifted);
    askedAt = now;
  }

  /** When a sample came in, on the machine's clock, as far as the device tells. */
  public long nanos(double sample) {
    return Math.round(origin + sample / rate * 1e9);
  }

  @Override
  public void close() {
    line.close();
  }
}

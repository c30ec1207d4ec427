package hingetone.sound.file;

import hingetone.sound.SoundFailure;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioFormat.Encoding;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/**
 * Reads a WAV, AIFF or FLAC file block by block as one channel of floating point, whatever its
 * rate, its width and its number of channels.
 */
public final class SoundReader implements AutoCloseable {
  private static final int BLOCK_FRAMES = 8192;
  private static final int MOST_CHANNELS = 64;

  /** Who writes a WAV file into a pipe says this length or more, for it is not known yet. */
  private static final int UNKNOWN_BYTES = 0x7FFFFF00;

  private final Path file;
  private final InputStream stream;
  private final AudioFormat format;
  private final Optional<Integer> channel;
  private final long frames;
  private final byte[] bytes;
  private long read;

  private SoundReader(
      Path file, InputStream stream, AudioFormat format, long frames, Optional<Integer> channel) {
    this.file = file;
    this.stream = stream;
    this.format = format;
    this.frames = frames;
    this.channel = channel;
    this.bytes = new byte[BLOCK_FRAMES * frameBytes()];
  }

  /**
   * Opens a file.
   *
   * @param channel which channel is read, from 1; without it the mean of all
   * @throws SoundFailure with the reason, where it cannot be read or lacks the channel
   */
  public static SoundReader open(Path file, Optional<Integer> channel) throws SoundFailure {
    SoundReader reader = open(file, startOf(file), channel);
    int channels = reader.format.getChannels();
    if (channel.isPresent() && channel.get() > channels) {
      reader.close();
      String has = channels == 1 ? "one channel" : channels + " channels";
      throw new SoundFailure(file + " has " + has + ", no channel " + channel.get() + ".");
    }
    return reader;
  }

  private static SoundReader open(Path file, String start, Optional<Integer> channel)
      throws SoundFailure {
    boolean flac = start.startsWith("fLaC");
    if (!flac && !start.startsWith("RIFF") && !start.startsWith("FORM")) {
      throw new SoundFailure(
          file
              + " is no sound file I can read: I know WAV, AIFF and FLAC. Convert it to WAV first.");
    }
    try {
      InputStream bytes = new BufferedInputStream(Files.newInputStream(file));
      try {
        return flac ? ofFlac(file, bytes, channel) : ofJava(file, bytes, channel);
      } catch (IOException | UnsupportedAudioFileException | RuntimeException e) {
        bytes.close();
        throw e;
      }
    } catch (IOException | UnsupportedAudioFileException | RuntimeException e) {
      throw new SoundFailure(file + " cannot be read: " + reason(e) + ".", e);
    }
  }

  private static String reason(Exception problem) {
    return problem instanceof UnsupportedAudioFileException || problem.getMessage() == null
        ? "its header is broken, or its samples are packed in a way I do not know"
        : problem.getMessage();
  }

  private static String startOf(Path file) throws SoundFailure {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new SoundFailure(file + " is no file: a recording is gone over twice.");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] start = in.readNBytes(4);
      if (start.length == 0) {
        throw new SoundFailure(file + " is empty.");
      }
      return new String(start, StandardCharsets.ISO_8859_1);
    } catch (IOException e) {
      String why = Files.exists(file) ? "cannot be read" : "does not exist";
      throw new SoundFailure(file + " " + why + ".", e);
    }
  }

  private static SoundReader ofFlac(Path file, InputStream bytes, Optional<Integer> channel)
      throws IOException {
    FlacStream flac = new FlacStream(bytes);
    AudioFormat format =
        new AudioFormat(
            flac.info().getSampleRate(),
            flac.info().getBitsPerSample(),
            flac.info().getChannels(),
            flac.info().getBitsPerSample() > 8,
            false);
    return checked(new SoundReader(file, flac, format, flac.info().getTotalSamples(), channel));
  }

  private static SoundReader ofJava(Path file, InputStream bytes, Optional<Integer> channel)
      throws IOException, UnsupportedAudioFileException {
    AudioInputStream in = AudioSystem.getAudioInputStream(bytes);
    Encoding encoding = in.getFormat().getEncoding();
    if (encoding.equals(Encoding.ULAW) || encoding.equals(Encoding.ALAW)) {
      in = AudioSystem.getAudioInputStream(Encoding.PCM_SIGNED, in);
    }
    return checked(new SoundReader(file, in, in.getFormat(), in.getFrameLength(), channel));
  }

  private static SoundReader checked(SoundReader reader) throws IOException {
    AudioFormat format = reader.format;
    int bits = format.getSampleSizeInBits();
    boolean known =
        format.getSampleRate() >= 1000
            && format.getChannels() >= 1
            && format.getChannels() <= MOST_CHANNELS
            && bits >= 8
            && bits <= 32
            && format.getFrameSize() == format.getChannels() * ((bits + 7) / 8);
    if (!known) {
      throw new IOException("its header makes no sense");
    }
    return reader;
  }

  /** Samples a second. */
  public double rate() {
    return format.getSampleRate();
  }

  /** How much has been read, 0 to 1; 0 where the header does not say how long the file is. */
  public double done() {
    return frames <= 0 ? 0 : Math.min(1, (double) read / frames);
  }

  /** What is said of a file that has been read and has less than its header says. */
  public Optional<String> missing() {
    boolean said = frames > 0 && frames < UNKNOWN_BYTES / frameBytes();
    return said && read < frames
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "The file breaks off after %.1f s, though its header says %.1f s.",
                read / rate(),
                frames / rate()))
        : Optional.empty();
  }

  /**
   * The next samples, −1 to 1; none at the end.
   *
   * @throws SoundFailure where the file breaks off in a way that cannot be read
   */
  public float[] next() throws SoundFailure {
    int count;
    try {
      count = stream.readNBytes(bytes, 0, bytes.length) / frameBytes();
    } catch (IOException | RuntimeException e) {
      String at = String.format(Locale.ROOT, "%.1f", read / rate());
      throw new SoundFailure(file + " is broken " + at + " s after its start.", e);
    }
    float[] mono = new float[count];
    for (int frame = 0; frame < count; frame++) {
      mono[frame] = channel.isPresent() ? sample(frame, channel.get() - 1) : mean(frame);
    }
    read += count;
    return mono;
  }

  private float mean(int frame) {
    float sum = 0;
    for (int c = 0; c < format.getChannels(); c++) {
      sum += sample(frame, c);
    }
    return sum / format.getChannels();
  }

  private int frameBytes() {
    return format.getFrameSize();
  }

  private float sample(int frame, int channel) {
    int width = (format.getSampleSizeInBits() + 7) / 8;
    int at = frame * frameBytes() + channel * width;
    int value = 0;
    for (int i = 0; i < width; i++) {
      int place = format.isBigEndian() ? at + i : at + width - 1 - i;
      value = value << 8 | bytes[place] & 0xFF;
    }
    if (format.getEncoding().equals(Encoding.PCM_FLOAT)) {
      float sample = Float.intBitsToFloat(value);
      return Float.isFinite(sample) ? Math.max(-8, Math.min(8, sample)) : 0;
    }
    int spare = 32 - 8 * width;
    if (format.getEncoding().equals(Encoding.PCM_UNSIGNED)) {
      value ^= 1 << 8 * width - 1;
    }
    return (value << spare) / 2147483648f;
  }

  @Override
  public void close() {
    try {
      stream.close();
    } catch (IOException e) {
      return; // nothing was written
    }
  }
}

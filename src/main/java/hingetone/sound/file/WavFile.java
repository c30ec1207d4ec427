package hingetone.sound.file;

import hingetone.sound.Pcm16;
import hingetone.text.Stamp;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes a stereo WAV file; its header is completed when it is closed. Behind the samples it says
 * what wrote it, as its INFO list (Multimedia Programming Interface and Data Specifications 1.0,
 * IBM and Microsoft 1991, chapter 2; from memory).
 */
public final class WavFile implements AutoCloseable {
  /** How samples are written. */
  public enum Samples {
    /** 16-bit integers, rounded and held at full scale. */
    SHORT(1, 2, new Stamp("wav")),
    /** 32-bit floating point, unchanged: for stems. */
    FLOAT(3, Float.BYTES, new Stamp("stem"));

    private final int formatTag;
    private final int bytes;
    private final Stamp stamp;

    Samples(int formatTag, int bytes, Stamp stamp) {
      this.formatTag = formatTag;
      this.bytes = bytes;
      this.stamp = stamp;
    }

    /** What files of such samples bear. */
    public Stamp stamp() {
      return stamp;
    }
  }

  private static final int HEADER_BYTES = 44;
  private static final int CHANNELS = 2;
  private static final int MOST_INFO_BYTES = 64;
  private static final long MOST_BYTES = 0xFFFF_FFFFL - HEADER_BYTES - MOST_INFO_BYTES;

  private final FileChannel channel;
  private final int sampleRate;
  private final Samples samples;
  private byte[] bytes = new byte[0];
  private long written;

  /** Creates or replaces a file. */
  public WavFile(Path file, int sampleRate, Samples samples) throws IOException {
    this.sampleRate = sampleRate;
    this.samples = samples;
    this.channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE);
    channel.position(HEADER_BYTES);
  }

  /** Adds interleaved stereo. */
  public void write(float[] stereo, int frames) throws IOException {
    int count = frames * CHANNELS * samples.bytes;
    if (bytes.length < count) {
      bytes = new byte[count];
    }
    if (samples == Samples.SHORT) {
      Pcm16.encode(stereo, frames, bytes);
    } else {
      ByteBuffer.wrap(bytes)
          .order(ByteOrder.LITTLE_ENDIAN)
          .asFloatBuffer()
          .put(stereo, 0, frames * CHANNELS);
    }
    if (written + count > MOST_BYTES) {
      throw new IOException("a WAV file holds 4 GB at most: take fewer laps");
    }
    writeFully(ByteBuffer.wrap(bytes, 0, count));
    written += count;
  }

  private void writeFully(ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  @Override
  public void close() throws IOException {
    try (channel) {
      ByteBuffer info = info();
      ByteBuffer header = header(info.remaining());
      writeFully(info);
      channel.position(0);
      writeFully(header);
    }
  }

  private ByteBuffer info() {
    byte[] software = ascii(samples.stamp.open() + "\0");
    int padded = software.length + software.length % 2;
    return ByteBuffer.allocate(20 + padded)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("LIST"))
        .putInt(12 + padded)
        .put(ascii("INFOISFT"))
        .putInt(software.length)
        .put(software)
        .rewind();
  }

  private ByteBuffer header(int behind) {
    int frameBytes = CHANNELS * samples.bytes;
    return ByteBuffer.allocate(HEADER_BYTES)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt((int) (written + HEADER_BYTES - 8 + behind))
        .put(ascii("WAVEfmt "))
        .putInt(16)
        .putShort((short) samples.formatTag)
        .putShort((short) CHANNELS)
        .putInt(sampleRate)
        .putInt(sampleRate * frameBytes)
        .putShort((short) frameBytes)
        .putShort((short) (8 * samples.bytes))
        .put(ascii("data"))
        .putInt((int) written)
        .flip();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}

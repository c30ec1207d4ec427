package hingetone.sound.file;

import hingetone.sound.SoundFailure;
import hingetone.sound.level.LoudnessMeter;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.function.DoubleConsumer;

/**
 * What a mixdown played, measured on its way and kept in a file of raw samples so that it can be
 * gone over several times without being held in memory; deleted when closed.
 */
final class Spool implements AutoCloseable {
  private static final int BLOCK = 4096;
  private static final int FRAME_BYTES = 2 * Float.BYTES;

  private final Path samples;
  private final FileChannel channel;
  private final LoudnessMeter meter = new LoudnessMeter(SoundFile.SAMPLE_RATE);
  private final ByteBuffer bytes =
      ByteBuffer.allocateDirect(BLOCK * FRAME_BYTES).order(ByteOrder.nativeOrder());

  private Spool(Path samples) throws IOException {
    this.samples = samples;
    this.channel = FileChannel.open(samples, StandardOpenOption.READ, StandardOpenOption.WRITE);
  }

  /** Plays a mixdown into a file in a folder. */
  static Spool of(Mixdown mixdown, Path folder, DoubleConsumer progress)
      throws SoundFailure, IOException {
    Path samples = Files.createTempFile(folder, ".hingetone", ".samples");
    samples.toFile().deleteOnExit();
    Spool spool = new Spool(samples);
    try (Relay relay = new Relay(spool::keep)) {
      mixdown.play(
          (stereo, count, done) -> {
            relay.give(stereo, count);
            progress.accept(done);
          });
      relay.finish();
      return spool;
    } catch (SoundFailure | IOException | RuntimeException e) {
      spool.close();
      throw e;
    }
  }

  private void keep(float[] stereo, int count) throws IOException {
    meter.add(stereo, count);
    for (int from = 0; from < count; from += BLOCK) {
      int some = Math.min(BLOCK, count - from);
      bytes.clear().asFloatBuffer().put(stereo, 2 * from, 2 * some);
      bytes.limit(some * FRAME_BYTES);
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    }
  }

  /** How many frames it holds. */
  long frames() throws IOException {
    return channel.size() / FRAME_BYTES;
  }

  /** Gives all of it, block by block. */
  void read(Mixdown.Taker taker) throws IOException {
    float[] stereo = new float[2 * BLOCK];
    long frames = frames();
    channel.position(0);
    for (long done = 0; done < frames; done += BLOCK) {
      int count = (int) Math.min(BLOCK, frames - done);
      bytes.clear().limit(count * FRAME_BYTES);
      while (bytes.hasRemaining()) {
        if (channel.read(bytes) < 0) {
          throw new EOFException(samples + " was cut off");
        }
      }
      bytes.flip().asFloatBuffer().get(stereo, 0, 2 * count);
      taker.take(stereo, count, (double) (done + count) / frames);
    }
  }

  /** The integrated loudness of it all, in LUFS. */
  double loudness() {
    return meter.integrated();
  }

  @Override
  public void close() throws IOException {
    channel.close();
    Files.deleteIfExists(samples);
  }
}

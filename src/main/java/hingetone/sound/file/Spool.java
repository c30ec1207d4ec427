package hingetone.sound.file;

import hingetone.sound.SoundFailure;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;

/**
 * What a mixdown played, kept in a file of raw samples so that it can be gone over several times
 * without being held in memory; deleted when closed.
 */
final class Spool implements AutoCloseable {
  private static final int BLOCK = 4096;
  private static final int BUFFER_BYTES = 1 << 16;

  private final Path samples;
  private long frames;

  private Spool(Path samples) {
    this.samples = samples;
  }

  /** Plays a mixdown into a file in a folder. */
  static Spool of(Mixdown mixdown, Path folder, DoubleConsumer progress)
      throws SoundFailure, IOException {
    Spool spool = new Spool(Files.createTempFile(folder, ".hingetone", ".samples"));
    spool.samples.toFile().deleteOnExit();
    try (DataOutputStream out =
        new DataOutputStream(
            new BufferedOutputStream(Files.newOutputStream(spool.samples), BUFFER_BYTES))) {
      mixdown.play(
          (stereo, count, done) -> {
            ByteBuffer bytes = ByteBuffer.allocate(2 * count * Float.BYTES);
            bytes.asFloatBuffer().put(stereo, 0, 2 * count);
            out.write(bytes.array());
            spool.frames += count;
            progress.accept(done);
          });
      return spool;
    } catch (SoundFailure | IOException | RuntimeException e) {
      spool.close();
      throw e;
    }
  }

  /** How many frames it holds. */
  long frames() {
    return frames;
  }

  /** Gives all of it, block by block. */
  void read(Mixdown.Taker taker) throws IOException {
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(Files.newInputStream(samples), BUFFER_BYTES))) {
      for (long done = 0; done < frames; done += BLOCK) {
        int count = (int) Math.min(BLOCK, frames - done);
        taker.take(next(in, count), count, (double) (done + count) / frames);
      }
    }
  }

  /** The integrated loudness of it all, in LUFS. */
  double loudness() throws IOException {
    LoudnessMeter meter = new LoudnessMeter(SoundFile.SAMPLE_RATE);
    read((stereo, count, done) -> meter.add(stereo, count));
    return meter.integrated();
  }

  private static float[] next(DataInputStream in, int count) throws IOException {
    byte[] bytes = new byte[2 * count * Float.BYTES];
    in.readFully(bytes);
    float[] stereo = new float[2 * count];
    ByteBuffer.wrap(bytes).asFloatBuffer().get(stereo);
    return stereo;
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(samples);
  }
}

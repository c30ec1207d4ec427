package hingetone.sound;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
    try (DataInputStream in = open()) {
      for (long done = 0; done < frames; done += BLOCK) {
        int count = blockAt(done);
        taker.take(next(in, count), count, (double) (done + count) / frames);
      }
    }
  }

  /** The integrated loudness of several spools played together, in LUFS. */
  static double loudnessOfSum(List<Spool> spools) throws IOException {
    LoudnessMeter meter = new LoudnessMeter(SoundFile.SAMPLE_RATE);
    long frames = spools.stream().mapToLong(Spool::frames).max().orElse(0);
    List<DataInputStream> inputs = new ArrayList<>();
    try {
      for (Spool spool : spools) {
        inputs.add(spool.open());
      }
      for (long done = 0; done < frames; done += BLOCK) {
        float[] sum = new float[2 * BLOCK];
        for (int i = 0; i < spools.size(); i++) {
          add(next(inputs.get(i), spools.get(i).blockAt(done)), sum);
        }
        meter.add(sum, (int) Math.min(BLOCK, frames - done));
      }
    } finally {
      for (DataInputStream input : inputs) {
        input.close();
      }
    }
    return meter.integrated();
  }

  private static void add(float[] some, float[] into) {
    for (int i = 0; i < some.length; i++) {
      into[i] += some[i];
    }
  }

  private int blockAt(long done) {
    return (int) Math.max(0, Math.min(BLOCK, frames - done));
  }

  private DataInputStream open() throws IOException {
    return new DataInputStream(
        new BufferedInputStream(Files.newInputStream(samples), BUFFER_BYTES));
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

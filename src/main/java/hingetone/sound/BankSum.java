package hingetone.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * Tells banks apart without reading all their samples: a sum over the length of the file, all its
 * lists, and the first {@value #READ} bytes of each {@value #EACH} of the samples.
 */
final class BankSum {
  private static final List<String> LISTS =
      List.of("phdr", "pbag", "pmod", "pgen", "inst", "ibag", "imod", "igen", "shdr");
  private static final int READ = 1 << 12;
  private static final int EACH = 1 << 18;
  private static final int DIGITS = 16;

  private BankSum() {}

  /**
   * The sum of a SoundFont, 16 hexadecimal digits.
   *
   * @throws SoundFailure when it is damaged
   */
  static String of(Path file) throws SoundFailure, IOException {
    try (FileChannel channel = FileChannel.open(file)) {
      RiffFile riff = RiffFile.read(file, channel);
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(ByteBuffer.allocate(Long.BYTES).putLong(0, channel.size()));
      for (String list : LISTS) {
        digest.update(riff.records(list, 1));
      }
      RiffFile.Chunk samples = riff.chunk("smpl");
      for (long at = 0; at < samples.size(); at += EACH) {
        int some = (int) Math.min(READ, samples.size() - at);
        digest.update(riff.bytes(samples.from() + at, some));
      }
      return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}

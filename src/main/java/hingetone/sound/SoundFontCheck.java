package hingetone.sound;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Refuses a file that is no SoundFont 2 or cannot be played, with the reason.
 *
 * <p>Source: SoundFont Technical Specification 2.04, chapters 4 to 7 (layouts from memory).
 */
final class SoundFontCheck {
  private static final int PRESET_BYTES = 38;
  private static final int SAMPLE_BYTES = 46;
  private static final int SAMPLE_TYPE = 44;
  private static final int COMPRESSED = 0x10;

  private SoundFontCheck() {}

  /**
   * Looks at a file without loading it.
   *
   * @throws SoundFailure with the reason why it cannot be played
   */
  static void check(Path file) throws SoundFailure {
    if (!Files.isRegularFile(file)) {
      String why = Files.exists(file) ? "it is no file." : "there is no such file.";
      throw new SoundFailure("Cannot read the sound font " + file + ": " + why);
    }
    try (FileChannel channel = FileChannel.open(file)) {
      check(file, RiffFile.read(file, channel));
    } catch (IOException e) {
      throw new SoundFailure("Cannot read the sound font " + file + ": it may not be read.", e);
    }
  }

  private static void check(Path file, RiffFile riff) throws SoundFailure, IOException {
    if (riff.records("ifil", 4).getShort(0) >= 3 || hasCompressed(riff)) {
      throw new SoundFailure(
          file
              + " has compressed samples (SF3), which cannot be played:"
              + " give the bank as a SoundFont 2 (.sf2).");
    }
    riff.chunk("smpl");
    // The last of the presets only ends their list.
    if (riff.records("phdr", PRESET_BYTES).limit() == PRESET_BYTES) {
      throw new SoundFailure(file + " holds no instruments; give another bank (.sf2).");
    }
  }

  private static boolean hasCompressed(RiffFile riff) throws SoundFailure, IOException {
    ByteBuffer samples = riff.records("shdr", SAMPLE_BYTES);
    for (int at = 0; at < samples.limit(); at += SAMPLE_BYTES) {
      if ((samples.getShort(at + SAMPLE_TYPE) & COMPRESSED) != 0) {
        return true;
      }
    }
    return false;
  }
}

package hingetone.sound;

import hingetone.sound.level.BankLevels;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The figures of a bank: those that come with the program, those found out on this machine and kept
 * in the user's cache folder, and those found out now. Any thread may ask and add.
 */
final class LevelStore {
  private static final long MOST_BYTES = 100_000;

  private final Optional<Path> file;
  private volatile BankLevels known;

  private LevelStore(Optional<Path> file, BankLevels known) {
    this.file = file;
    this.known = known;
  }

  /** The figures of a bank that cannot be told from others: none, and they are not kept. */
  static LevelStore unkept() {
    return new LevelStore(Optional.empty(), BankLevels.NONE);
  }

  /** The figures of the bank with a checksum, kept in a folder. */
  static LevelStore of(String checksum, Path folder) {
    Path file = folder.resolve("levels-" + checksum + ".txt");
    return new LevelStore(Optional.of(file), kept(file).with(BankLevels.shippedOf(checksum)));
  }

  /** What is kept; nothing where that is damaged. */
  private static BankLevels kept(Path file) {
    try {
      return Files.isRegularFile(file) && Files.size(file) < MOST_BYTES
          ? BankLevels.parse(Files.readString(file))
          : BankLevels.NONE;
    } catch (IOException | IllegalArgumentException e) {
      return BankLevels.NONE;
    }
  }

  /** What is known by now. */
  BankLevels known() {
    return known;
  }

  /** Takes more figures and keeps all, where that can be done. */
  synchronized void add(BankLevels more) {
    known = known.with(more);
    if (file.isPresent()) {
      try {
        CacheFile.write(
            file.get(), out -> out.write(known.text().getBytes(StandardCharsets.UTF_8)));
      } catch (IOException e) {
        return; // they are found out anew at the next start
      }
    }
  }
}

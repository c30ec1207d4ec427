package hingetone.sound;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** A file of the user's cache folder, which appears whole or not at all. */
final class CacheFile {
  /** What an unfinished one ends with; its name begins with that of the file. */
  static final String UNFINISHED = ".part";

  private CacheFile() {}

  /** Writes what a file holds. */
  @FunctionalInterface
  interface Content {
    void write(OutputStream out) throws IOException;
  }

  /** Writes a file, in place of one that may be there; its folder is made where it is missing. */
  static void write(Path file, Content content) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    Files.createDirectories(folder);
    Path unfinished = Files.createTempFile(folder, file.getFileName().toString(), UNFINISHED);
    try {
      try (OutputStream out = Files.newOutputStream(unfinished)) {
        content.write(out);
      }
      Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(unfinished);
    }
  }
}

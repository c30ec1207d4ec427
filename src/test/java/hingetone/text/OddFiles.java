package hingetone.text;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;

/** Things in a file system that nobody should read as a text. */
public final class OddFiles {
  private OddFiles() {}

  /** A pipe with a name, which nobody writes to; the test is passed over where there are none. */
  public static Path pipe(Path at) throws IOException, InterruptedException {
    try {
      assumeTrue(new ProcessBuilder("mkfifo", at.toString()).start().waitFor() == 0);
    } catch (IOException e) {
      assumeTrue(false, "this system has no named pipes");
    }
    return at;
  }

  /** A file of 3 GB, which takes no room. */
  public static Path huge(Path at) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(at.toFile(), "rw")) {
      file.setLength(3L << 30);
    }
    return at;
  }

  /** A folder that is there and that nobody can open: a link that leads to itself. */
  public static Path closedFolder(Path at) throws IOException {
    return Files.createSymbolicLink(at, at);
  }
}

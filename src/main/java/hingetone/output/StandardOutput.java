package hingetone.output;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;

/**
 * Standard output that ends the command when it cannot be written to, where {@link System#out}
 * would go on in silence: with a line to the player, or quietly where it is a pipe whose reader has
 * gone, as that of {@code | head -1} has.
 */
public final class StandardOutput extends OutputStream {
  /** Kinds of file in a Unix mode (POSIX.1-2017, sys/stat.h; the numbers are common practice). */
  private static final int KIND = 0170000;

  private static final int PIPE = 0010000;
  private static final int SOCKET = 0140000;

  private final OutputStream target;
  private final BooleanSupplier isPipe;

  /**
   * Writes to a target.
   *
   * @param isPipe whether a failure means that the reader has gone
   */
  StandardOutput(OutputStream target, BooleanSupplier isPipe) {
    this.target = target;
    this.isPipe = isPipe;
  }

  /** That of this program. */
  public static StandardOutput ofThisProgram() {
    return new StandardOutput(
        new FileOutputStream(FileDescriptor.out), () -> isPipe(Path.of("/dev/stdout")));
  }

  /** What the system says of a failure is in the user's language, so the kind of file decides. */
  private static boolean isPipe(Path output) {
    try {
      int kind = (int) Files.getAttribute(output, "unix:mode") & KIND;
      return kind == PIPE || kind == SOCKET;
    } catch (IOException | UnsupportedOperationException | IllegalArgumentException e) {
      return false;
    }
  }

  /**
   * Writes at once.
   *
   * @throws CommandFailure when that is not possible
   */
  @Override
  public void write(byte[] bytes, int offset, int length) {
    try {
      target.write(bytes, offset, length);
    } catch (IOException e) {
      throw isPipe.getAsBoolean()
          ? CommandFailure.quiet()
          : CommandFailure.couldNot("Cannot write to standard output: " + e.getMessage());
    }
  }

  @Override
  public void write(int oneByte) {
    write(new byte[] {(byte) oneByte}, 0, 1);
  }
}

package hingetone.output;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A hidden folder for what is not finished yet, beside where it will go. It goes when it is closed
 * or the program ends; where the program was killed, the next one that works beside it finds it by
 * its name, and by a lock that nobody holds any more.
 */
final class WorkFolder implements AutoCloseable {
  private static final String PREFIX = ".hingetone-unfinished-";
  private static final String LOCK = "lock";

  private final Path folder;
  private final FileChannel lock;
  private final Thread atTheEnd = new Thread(this::empty, "clear up");

  private WorkFolder(Path folder, FileChannel lock) {
    this.folder = folder;
    this.lock = lock;
  }

  /**
   * A new one in a folder, which is cleared of those that nobody works in any more.
   *
   * @throws IOException when the folder cannot be written to
   */
  static WorkFolder in(Path parent) throws IOException {
    sweep(parent);
    while (true) {
      Path folder = Files.createTempDirectory(parent, PREFIX);
      Path file = folder.resolve(LOCK);
      FileChannel lock =
          FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      WorkFolder created = new WorkFolder(folder, lock);
      // Another program may have swept it away before it was locked.
      if (isFree(lock) && Files.exists(file)) {
        Runtime.getRuntime().addShutdownHook(created.atTheEnd);
        return created;
      }
      created.empty();
    }
  }

  /** A place in it. */
  Path resolve(String name) {
    return folder.resolve(name);
  }

  private static void sweep(Path parent) throws IOException {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(parent, PREFIX + "*")) {
      for (Path folder : left) {
        if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS) && isDead(folder)) {
          delete(folder);
        }
      }
    }
  }

  /** One without a lock is just being made, or not ours. */
  private static boolean isDead(Path folder) {
    try (FileChannel lock = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.WRITE)) {
      return isFree(lock);
    } catch (IOException e) {
      return false;
    }
  }

  /** Takes the lock where nobody holds it; the system lets it go when the program ends. */
  private static boolean isFree(FileChannel lock) throws IOException {
    try {
      return lock.tryLock() != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  private static void delete(Path folder) {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      return; // another program is at it, or it holds what we did not put there
    }
  }

  @Override
  public void close() {
    empty();
    try {
      Runtime.getRuntime().removeShutdownHook(atTheEnd);
    } catch (IllegalStateException e) {
      return; // the program is ending, and does the same
    }
  }

  private void empty() {
    try (lock) {
      delete(folder);
    } catch (IOException e) {
      return; // let go with the program
    }
  }
}

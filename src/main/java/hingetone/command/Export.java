package hingetone.command;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Files that appear whole or not at all: they are written under other names beside their places and
 * moved there when all of them are finished.
 */
final class Export implements AutoCloseable {
  private final List<Path> files;
  private final List<Path> unfinished = new ArrayList<>();

  private Export(List<Path> files) {
    this.files = List.copyOf(files);
  }

  /**
   * Begins to write some files.
   *
   * @throws CommandFailure when their folder does not exist or cannot be written to
   */
  static Export of(List<Path> files) {
    Export export = new Export(files);
    for (Path file : files) {
      if (Files.isDirectory(file)) {
        throw CommandFailure.wrongInput(file + " is a folder; give the name of a file.");
      }
      export.unfinished.add(create(file));
    }
    return export;
  }

  private static Path create(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      throw CommandFailure.wrongInput("Cannot write " + file + ": there is no folder " + folder);
    }
    String name = "." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part";
    Path unfinished = folder.resolve(name);
    try {
      Files.deleteIfExists(unfinished);
      Files.createFile(unfinished);
      unfinished.toFile().deleteOnExit();
      return unfinished;
    } catch (IOException e) {
      throw CommandFailure.couldNot("Cannot write into the folder " + folder + ".");
    }
  }

  /** Where to write, in the order of the files. */
  List<Path> unfinished() {
    return List.copyOf(unfinished);
  }

  /** Moves all to their places. */
  void finish() throws IOException {
    for (int i = 0; i < files.size(); i++) {
      try {
        Files.move(unfinished.get(i), files.get(i), StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(unfinished.get(i), files.get(i), StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  /** Takes away what was not finished. */
  @Override
  public void close() {
    for (Path path : unfinished) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        continue; // deleted when the program ends
      }
    }
  }
}

package hingetone.output;

import hingetone.text.Stamp;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Files that appear whole or not at all: they are written elsewhere and brought to their places
 * when all of them are finished. A file that is replaced keeps its mode, a link leads to the file
 * that is replaced, and a pipe or a device is written to.
 */
public final class Export implements AutoCloseable {
  private static final int MOST_LINKS = 40;

  /** Where something finished goes. */
  private interface Place {
    /** Says what will be replaced there; fails when that must not be. */
    default String check() throws IOException {
      return "";
    }

    void take(Path finished) throws IOException;
  }

  /** A file, at the end of the links that its name may be. */
  private record Target(Path file, Path end, Stamp stamp, Overwriting rule) implements Place {
    @Override
    public String check() throws IOException {
      return rule.check(file, stamp);
    }

    @Override
    public void take(Path finished) throws IOException {
      PosixFileAttributeView mode = Files.getFileAttributeView(end, PosixFileAttributeView.class);
      if (mode != null && Files.exists(end)) {
        Files.setPosixFilePermissions(finished, mode.readAttributes().permissions());
      }
      Files.move(finished, end, StandardCopyOption.ATOMIC_MOVE);
    }
  }

  private final Overwriting rule;
  private final Set<Path> taken = new HashSet<>();
  private final List<Place> places = new ArrayList<>();
  private final List<Path> unfinished = new ArrayList<>();
  private final Map<Path, WorkFolder> folders = new HashMap<>();

  /** None yet; they may take the places of what the rule allows. */
  public Export(Overwriting rule) {
    this.rule = rule;
  }

  /**
   * Begins to write a file.
   *
   * @param stamp what it will bear
   * @throws CommandFailure when it is a folder, lies in none, is one with another, or must not be
   *     replaced
   */
  public void add(Path file, Stamp stamp) throws IOException {
    Path end = followed(file);
    if (!taken.add(end)) {
      throw CommandFailure.wrongInput("Cannot write two files into one, " + file + ".");
    }
    if (isStream(end)) {
      add(temporary(), finished -> pour(finished, end));
    } else {
      Target target = new Target(file, end, stamp, rule);
      target.check();
      add(end.getParent(), target);
    }
  }

  private static void pour(Path finished, Path into) throws IOException {
    try (OutputStream out = Files.newOutputStream(into, StandardOpenOption.WRITE)) {
      Files.copy(finished, out);
    }
  }

  /** Begins to write what goes to standard output when it is finished. */
  public void addStandardOutput() {
    add(temporary(), finished -> Files.copy(finished, StandardOutput.ofThisProgram()));
  }

  private static Path temporary() {
    return Path.of(System.getProperty("java.io.tmpdir"));
  }

  /** Where a chain of links leads, whether there is a file or not. */
  private static Path followed(Path file) throws IOException {
    Path end = file;
    for (int i = 0; i < MOST_LINKS && Files.isSymbolicLink(end); i++) {
      end = end.resolveSibling(Files.readSymbolicLink(end));
    }
    if (Files.isDirectory(end)) {
      throw CommandFailure.wrongInput(file + " is a folder; give the name of a file.");
    }
    Path folder = end.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      throw CommandFailure.wrongInput("Cannot write " + file + ": there is no folder " + folder);
    }
    return folder.toRealPath().resolve(end.getFileName());
  }

  /** Whether a file is a pipe or a device, which keeps nothing. */
  public static boolean isStream(Path file) {
    return Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file);
  }

  private void add(Path folder, Place place) {
    try {
      WorkFolder work = folders.get(folder);
      if (work == null) {
        work = WorkFolder.in(folder);
        folders.put(folder, work);
      }
      unfinished.add(work.resolve(Integer.toString(places.size())));
      places.add(place);
    } catch (IOException e) {
      throw CommandFailure.couldNot("Cannot write into the folder " + folder + ".");
    }
  }

  /** Where to write, in the order of the files. */
  public List<Path> unfinished() {
    return List.copyOf(unfinished);
  }

  /** Brings all to their places, or none; says of each what it replaced. */
  public List<String> finish() throws IOException {
    List<String> replaced = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      Stamp.close(unfinished.get(i));
      // Something may have come there while it was being written.
      replaced.add(places.get(i).check());
    }
    for (int i = 0; i < places.size(); i++) {
      places.get(i).take(unfinished.get(i));
    }
    return replaced;
  }

  /** Takes away what was not finished. */
  @Override
  public void close() {
    folders.values().forEach(WorkFolder::close);
  }
}

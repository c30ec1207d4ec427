package hingetone.take;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A folder of takes. A take is plain files of one name: the chart as played {@code .yaml}, the
 * notes {@code .mid}; while it is being played its journal {@code .journal} stands in the place of
 * the notes, locked by whoever plays.
 */
public final class TakeFiles {
  /** Endings of the files that a take is made of. */
  public static final String CHART = ".yaml";

  public static final String NOTES = ".mid";
  private static final String JOURNAL = ".journal";
  private static final int LONGEST_NAME = 80;

  private final Path folder;

  /** A folder, which need not be there yet. */
  public TakeFiles(Path folder) {
    this.folder = folder;
  }

  /** Writes what a take's file of notes holds. */
  public interface NotesWriter {
    void write(String chart, Take take, OutputStream out) throws IOException;
  }

  /** A journal that is being written; not for several threads. */
  public static final class Journal implements AutoCloseable {
    private final String name;
    private final FileChannel channel;

    private Journal(String name, FileChannel channel) {
      this.name = name;
      this.channel = channel;
    }

    /** The take's name. */
    public String name() {
      return name;
    }

    /** Adds an event; it is in the system's hands when this returns. */
    public void add(TakeEvent event) throws IOException {
      channel.write(StandardCharsets.US_ASCII.encode(event.text() + "\n"));
    }

    @Override
    public void close() throws IOException {
      channel.close();
    }
  }

  /** Why a text is no name of a take; empty where it is one. */
  public static Optional<String> problemOf(String name) {
    boolean plain =
        name.length() <= LONGEST_NAME && name.matches("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]*");
    return plain
        ? Optional.empty()
        : Optional.of("a take's name has letters, digits, spaces, dots and hyphens");
  }

  /** A name that no take has yet: the one wanted, else with a number after it. */
  public String free(String wanted) {
    String name = wanted;
    for (int i = 2; isTaken(name); i++) {
      name = wanted + "-" + i;
    }
    return name;
  }

  private boolean isTaken(String name) {
    return Stream.of(CHART, NOTES, JOURNAL).anyMatch(end -> Files.exists(file(name, end)));
  }

  /** A file of a take. */
  public Path file(String name, String ending) {
    return folder.resolve(name + ending);
  }

  /** Begins a take under a name that is {@linkplain #free free}. */
  public Journal begin(String name, String chart) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(file(name, CHART), chart, StandardOpenOption.CREATE_NEW);
    FileChannel channel =
        FileChannel.open(
            file(name, JOURNAL), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    channel.tryLock();
    return new Journal(name, channel);
  }

  /**
   * Makes takes of the journals that nobody writes any more.
   *
   * @return the names of those made
   */
  public List<String> finish(NotesWriter writer) throws IOException {
    List<String> made = new ArrayList<>();
    for (String name : named(JOURNAL)) {
      try (FileChannel channel =
          FileChannel.open(
              file(name, JOURNAL), StandardOpenOption.READ, StandardOpenOption.WRITE)) {
        Optional<FileLock> lock = lock(channel);
        if (lock.isPresent()) {
          finish(name, writer);
          made.add(name);
        }
      }
    }
    return made;
  }

  private static Optional<FileLock> lock(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      // This very program writes it.
      return Optional.empty();
    }
  }

  private void finish(String name, NotesWriter writer) throws IOException {
    List<TakeEvent> events =
        Files.readString(file(name, JOURNAL), StandardCharsets.ISO_8859_1)
            .lines()
            .flatMap(line -> TakeEvent.parse(line).stream())
            .toList();
    Path unfinished = file(name, NOTES + ".part");
    try (OutputStream out = Files.newOutputStream(unfinished)) {
      writer.write(Files.readString(file(name, CHART)), Take.of(events), out);
    }
    Files.move(unfinished, file(name, NOTES), StandardCopyOption.ATOMIC_MOVE);
    Files.delete(file(name, JOURNAL));
  }

  /** The names of the takes that are finished, in order. */
  public List<String> names() throws IOException {
    return named(NOTES);
  }

  private List<String> named(String ending) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(file -> file.endsWith(ending))
          .map(file -> file.substring(0, file.length() - ending.length()))
          .sorted()
          .toList();
    }
  }

  /** Removes a take's files. */
  public void remove(String name) throws IOException {
    for (String ending : List.of(NOTES, CHART)) {
      Files.deleteIfExists(file(name, ending));
    }
  }
}

package hingetone.text.reading;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * YAML files that are found by name: those that come with the program, and those of a player's
 * folder, which override and add.
 *
 * @param shelf where those of the program lie among its resources: {@code grooves}
 * @param builtIn the names of those
 * @param own the player's own by name
 */
public record NamedFiles(String shelf, List<String> builtIn, Map<String, Path> own) {
  private static final String ENDING = ".yaml";

  /** The program's own. */
  public NamedFiles(String shelf, List<String> builtIn) {
    this(shelf, builtIn, Map.of());
  }

  /**
   * With the files of a player's folder, which need not be there; hidden ones are an editor's.
   *
   * @throws IOException when it is there and cannot be read
   */
  public NamedFiles withFolder(Path playersFolder) throws IOException {
    Map<String, Path> found = new TreeMap<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(playersFolder, "[!.]*" + ENDING)) {
      files.forEach(file -> found.put(withoutEnding(file.getFileName().toString()), file));
    } catch (NoSuchFileException | NotDirectoryException e) {
      return this;
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return new NamedFiles(shelf, builtIn, found);
  }

  /** All names, in order. */
  public List<String> names() {
    TreeSet<String> names = new TreeSet<>(builtIn);
    names.addAll(own.keySet());
    return List.copyOf(names);
  }

  /** A file's name as it is asked for. */
  public static String withoutEnding(String file) {
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  /** The text under a name, the player's own before the program's; empty when there is none. */
  public Optional<Reading<Source>> find(String name) {
    return Optional.ofNullable(own.get(name))
        .map(TextFile::read)
        .or(() -> Optional.of(name).filter(builtIn::contains).map(this::builtInText));
  }

  private Reading<Source> builtInText(String name) {
    String place = shelf + "/" + name + ENDING;
    try (InputStream in = NamedFiles.class.getResourceAsStream("/" + place)) {
      return TextFile.read(place, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

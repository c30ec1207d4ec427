package hingetone.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * YAML files that are found by name: those that come with the program, and those of a player's
 * folder, which override and add.
 *
 * @param shelf where those of the program lie among its resources: {@code grooves}
 * @param builtIn the names of those
 * @param folder the player's folder; empty when there is none
 */
public record NamedFiles(String shelf, List<String> builtIn, Optional<Path> folder) {
  private static final String ENDING = ".yaml";

  /** A player's folder, where it exists. */
  public NamedFiles withFolder(Path playersFolder) {
    return new NamedFiles(shelf, builtIn, Optional.of(playersFolder).filter(Files::isDirectory));
  }

  /** All names, in order. */
  public List<String> names() {
    TreeSet<String> names = new TreeSet<>(builtIn);
    folder.ifPresent(f -> names.addAll(namesIn(f)));
    return List.copyOf(names);
  }

  private static List<String> namesIn(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(ENDING))
          .map(NamedFiles::withoutEnding)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file's name as it is asked for. */
  public static String withoutEnding(String file) {
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  /** The text under a name, the player's own before the program's; empty when there is none. */
  public Optional<Reading<Source>> find(String name) {
    Optional<Path> own = folder.map(f -> f.resolve(name + ENDING)).filter(Files::isRegularFile);
    return own.map(path -> TextFile.read(path.toString()))
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

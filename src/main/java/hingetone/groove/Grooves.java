package hingetone.groove;

import hingetone.text.Problems;
import hingetone.text.Reading;
import hingetone.text.Source;
import hingetone.text.Span;
import hingetone.text.TextFile;
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
 * The grooves there are: those that come with the program, and those of the user's folder, which
 * override and add.
 *
 * @param folder the user's folder; empty when there is none
 * @param beside the folder from which a path in a chart counts
 */
public record Grooves(Optional<Path> folder, Path beside) {
  /** The groove that fits any meter, used where a chart names none. */
  public static final String PLAIN = "plain";

  /** The grooves that come with the program. */
  static final List<String> BUILT_IN =
      List.of(
          "back-porch",
          "coal-train",
          "copper-alley",
          "crooked-mile",
          "gravel-road",
          "heavy-gate",
          "lantern-slow",
          "paper-boat",
          "plain",
          "round-pond",
          "salt-hammock",
          "slack-rope",
          "tin-kettle",
          "velvet-stair",
          "winter-rain");

  private static final String ENDING = ".yaml";

  /** Only the grooves that come with the program. */
  public static Grooves builtIn() {
    return new Grooves(Optional.empty(), Path.of(""));
  }

  /** With the user's folder, where it exists. */
  public Grooves withFolder(Path userFolder) {
    return new Grooves(
        Files.isDirectory(userFolder) ? Optional.of(userFolder) : Optional.empty(), beside);
  }

  /** With paths counted from a folder, as a rule the chart's. */
  public Grooves beside(Path chartFolder) {
    return new Grooves(folder, chartFolder);
  }

  /** All names, in order. */
  public List<String> names() {
    TreeSet<String> names = new TreeSet<>(BUILT_IN);
    folder.ifPresent(f -> names.addAll(namesIn(f)));
    return List.copyOf(names);
  }

  private static List<String> namesIn(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(ENDING))
          .map(name -> name.substring(0, name.length() - ENDING.length()))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** All grooves that can be read, in the order of their names. */
  public List<Groove> all() {
    return names().stream().flatMap(name -> read(name).value().stream()).toList();
  }

  /** Whether there is a groove with a name, or a file at a path. */
  public boolean has(String nameOrPath) {
    return names().contains(nameOrPath) || Files.isRegularFile(beside.resolve(nameOrPath));
  }

  /** Reads a groove by its name or path. */
  public Reading<Groove> read(String nameOrPath) {
    Reading<Source> text = text(nameOrPath);
    return text.value()
        .map(source -> GrooveReader.read(source, nameOf(nameOrPath)))
        .orElseGet(() -> Reading.failed(text.problems()));
  }

  /** The name of the groove that a name or a path leads to. */
  public static String nameOf(String nameOrPath) {
    String file = nameOrPath.substring(nameOrPath.lastIndexOf('/') + 1);
    return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
  }

  private Reading<Source> text(String nameOrPath) {
    Optional<Path> own =
        folder.map(f -> f.resolve(nameOrPath + ENDING)).filter(Files::isRegularFile);
    if (own.isPresent()) {
      return TextFile.read(own.get().toString());
    }
    if (BUILT_IN.contains(nameOrPath)) {
      return builtInText(nameOrPath);
    }
    Path path = beside.resolve(nameOrPath);
    if (Files.isRegularFile(path)) {
      return TextFile.read(path.toString());
    }
    Problems problems = new Problems(new Source(nameOrPath, ""));
    problems.add(
        new Span(0, 0),
        "there is no groove \"" + nameOrPath + "\"",
        "The grooves are " + String.join(", ", names()) + "; a path to a file will do too.");
    return problems.reading(() -> null);
  }

  private static Reading<Source> builtInText(String name) {
    try (InputStream in = Grooves.class.getResourceAsStream("/grooves/" + name + ENDING)) {
      return TextFile.read("grooves/" + name + ENDING, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

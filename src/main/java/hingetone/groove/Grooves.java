package hingetone.groove;

import hingetone.text.FileNames;
import hingetone.text.reading.NamedFiles;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.Span;
import hingetone.text.reading.TextFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * The grooves there are: those that come with the program, and those of the user's folder, which
 * override and add.
 *
 * @param files where those with a name are
 * @param beside the folder from which a path in a chart counts
 */
public record Grooves(NamedFiles files, Path beside) {
  /** The groove that fits any meter, used where a chart names none. */
  public static final String PLAIN = "plain";

  /** The grooves that come with the program. */
  static final List<String> BUILT_IN =
      List.of(
          "back-porch",
          "barrel-yard",
          "choir-loft",
          "coal-train",
          "copper-alley",
          "crooked-mile",
          "dust-lane",
          "glass-harbour",
          "gravel-road",
          "hay-ladder",
          "heavy-gate",
          "iron-ferry",
          "lantern-slow",
          "mirror-hall",
          "paper-boat",
          "penny-arcade",
          "plain",
          "pogo-pier",
          "round-pond",
          "salt-hammock",
          "slack-rope",
          "tin-kettle",
          "velvet-stair",
          "winter-rain");

  /** Only the grooves that come with the program. */
  public static Grooves builtIn() {
    return new Grooves(new NamedFiles("grooves", BUILT_IN), Path.of(""));
  }

  /**
   * With the user's folder, where it exists.
   *
   * @throws IOException when it cannot be read
   */
  public Grooves withFolder(Path userFolder) throws IOException {
    return new Grooves(files.withFolder(userFolder), beside);
  }

  /** With paths counted from a folder, as a rule the chart's. */
  public Grooves beside(Path chartFolder) {
    return new Grooves(files, chartFolder);
  }

  /** All names, in order. */
  public List<String> names() {
    return files.names();
  }

  /** All grooves that can be read, in the order of their names. */
  public List<Groove> all() {
    return names().stream().flatMap(name -> read(name).value().stream()).toList();
  }

  /** Whether there is a groove with a name, or a file at a path. */
  public boolean has(String nameOrPath) {
    return names().contains(nameOrPath) || file(nameOrPath).isPresent();
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
    return NamedFiles.withoutEnding(nameOrPath.substring(nameOrPath.lastIndexOf('/') + 1));
  }

  private Reading<Source> text(String nameOrPath) {
    Optional<Reading<Source>> named = files.find(nameOrPath);
    if (named.isPresent()) {
      return named.get();
    }
    Optional<Path> file = file(nameOrPath);
    if (file.isPresent()) {
      return TextFile.read(file.get());
    }
    Problems problems = new Problems(new Source(nameOrPath, ""));
    problems.add(
        new Span(0, 0),
        "there is no groove \"" + nameOrPath + "\"",
        "The grooves are " + String.join(", ", names()) + "; a path to a file will do too.");
    return problems.reading(() -> null);
  }

  /** The file of a groove that is given by its path; empty where there is none. */
  public Optional<Path> file(String path) {
    try {
      return Optional.of(beside.resolve(FileNames.path(path))).filter(Files::isRegularFile);
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}

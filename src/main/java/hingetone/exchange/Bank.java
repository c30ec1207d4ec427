package hingetone.exchange;

import hingetone.text.Diagnostic;
import hingetone.text.Reading;
import hingetone.text.Source;
import hingetone.text.TextFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The bank of statements: the files that come with the program, and those of the player's folder,
 * which override and add.
 *
 * <pre>{@code
 * List<Statement> statements = Bank.builtIn().withFolder(folder).read().value().orElseThrow();
 * }</pre>
 *
 * @param folder the player's folder; empty when there is none
 */
public record Bank(Optional<Path> folder) {
  /** The files that come with the program. */
  static final List<String> BUILT_IN =
      List.of("odd", "sixteenths", "straight", "swung", "twelve-eight");

  private static final String ENDING = ".yaml";

  /** Only what comes with the program. */
  public static Bank builtIn() {
    return new Bank(Optional.empty());
  }

  /** With the player's folder, where it exists. */
  public Bank withFolder(Path playersFolder) {
    return new Bank(Optional.of(playersFolder).filter(Files::isDirectory));
  }

  /** The names of all files, in order. */
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

  /** Every statement, file after file; or every problem of every file. */
  public Reading<List<Statement>> read() {
    List<Statement> statements = new ArrayList<>();
    List<Diagnostic> problems = new ArrayList<>();
    for (String name : names()) {
      Reading<List<Statement>> reading = text(name).then(PhraseReader::read);
      reading.value().ifPresent(statements::addAll);
      problems.addAll(reading.problems());
    }
    return problems.isEmpty() ? Reading.of(List.copyOf(statements)) : Reading.failed(problems);
  }

  private Reading<Source> text(String name) {
    Optional<Path> own = folder.map(f -> f.resolve(name + ENDING)).filter(Files::isRegularFile);
    return own.map(path -> TextFile.read(path.toString())).orElseGet(() -> builtInText(name));
  }

  private static Reading<Source> builtInText(String name) {
    String place = "phrases/" + name + ENDING;
    try (InputStream in = Bank.class.getResourceAsStream("/" + place)) {
      return TextFile.read(place, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

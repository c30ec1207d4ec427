package hingetone.phrase;

import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.NamedFiles;
import hingetone.text.reading.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The bank of statements: the files that come with the program, and those of the player's folder,
 * which override and add.
 *
 * <pre>{@code
 * List<Statement> statements = StatementBank.builtIn().withFolder(folder).read().value().orElseThrow();
 * }</pre>
 *
 * @param files where they are
 */
public record StatementBank(NamedFiles files) {
  /** The files that come with the program. */
  static final List<String> BUILT_IN =
      List.of(
          "blues",
          "boogie",
          "bossa",
          "funk",
          "odd",
          "riffs",
          "shuffle",
          "sixteenths",
          "straight",
          "swing",
          "swung",
          "threes",
          "twelve-eight");

  /** Only what comes with the program. */
  public static StatementBank builtIn() {
    return new StatementBank(new NamedFiles("phrases", BUILT_IN));
  }

  /**
   * With the player's folder, where it exists.
   *
   * @throws IOException when it cannot be read
   */
  public StatementBank withFolder(Path playersFolder) throws IOException {
    return new StatementBank(files.withFolder(playersFolder));
  }

  /** The names of all files, in order. */
  public List<String> names() {
    return files.names();
  }

  /** Every statement, file after file; or every problem of every file. */
  public Reading<List<Statement>> read() {
    List<Statement> statements = new ArrayList<>();
    List<Diagnostic> problems = new ArrayList<>();
    for (String name : names()) {
      Reading<List<Statement>> reading = files.find(name).orElseThrow().then(PhraseReader::read);
      reading.value().ifPresent(statements::addAll);
      problems.addAll(reading.problems());
    }
    return problems.isEmpty() ? Reading.of(List.copyOf(statements)) : Reading.failed(problems);
  }
}

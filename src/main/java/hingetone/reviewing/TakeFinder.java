package hingetone.reviewing;

import hingetone.chart.Chart;
import hingetone.output.CommandFailure;
import hingetone.take.TakeFiles;
import hingetone.text.FileNames;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds what is to be reviewed.
 *
 * @param files where takes are kept
 */
public record TakeFinder(TakeFiles files) {

  /**
   * The file of notes: a take of that name, a file as named, or the last take.
   *
   * @throws CommandFailure where there is none
   */
  public Path notes(Optional<String> take) {
    if (take.isEmpty()) {
      return last();
    }
    String wanted = take.get();
    boolean named = TakeFiles.problemOf(wanted).isEmpty();
    if (named && Files.exists(files.file(wanted, TakeFiles.NOTES))) {
      return files.file(wanted, TakeFiles.NOTES);
    }
    Path file = FileNames.path(wanted);
    if (!Files.isRegularFile(file)) {
      throw CommandFailure.wrongInput(
          "There is no take \"" + wanted + "\" and no such file; takes lists the takes.");
    }
    return file;
  }

  private Path last() {
    try {
      List<String> names = files.names();
      return names.stream()
          .map(name -> files.file(name, TakeFiles.NOTES))
          .max(Comparator.comparingLong(file -> file.toFile().lastModified()))
          .orElseThrow(
              () -> CommandFailure.wrongInput("No takes yet: play --in PORT, and R records."));
    } catch (IOException e) {
      throw CommandFailure.couldNot("The takes cannot be read: " + e.getMessage());
    }
  }

  /**
   * The chart that notes were played over.
   *
   * @param said the one that is asked for, else the one beside them
   * @throws CommandFailure where there is none, or it has problems
   */
  public static Chart chart(Path notes, Optional<String> said) {
    String name = notes.getFileName().toString();
    String own = name.substring(0, Math.max(0, name.lastIndexOf('.'))) + TakeFiles.CHART;
    String from = said.orElseGet(() -> notes.resolveSibling(own).toString());
    if (said.isEmpty() && !Files.exists(Path.of(from))) {
      throw CommandFailure.wrongInput(
          "Beside " + notes + " there is no " + own + ": say which chart with --chart.");
    }
    return ChartPlaces.read(from);
  }
}

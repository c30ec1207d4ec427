package hingetone.command;

import hingetone.chart.Chart;
import hingetone.output.CommandFailure;
import hingetone.output.Overwriting;
import hingetone.print.ReviewJson;
import hingetone.review.Marks;
import hingetone.review.MarksReader;
import hingetone.review.MarksText;
import hingetone.review.Played;
import hingetone.review.Review;
import hingetone.review.Story;
import hingetone.take.TakeFiles;
import hingetone.take.TakeReader;
import hingetone.text.FileNames;
import hingetone.text.Printable;
import hingetone.text.reading.TextFile;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tells what was played, bar by bar, and why it worked. */
@Command(
    name = "review",
    description = {
      "Tell what was played, bar by bar, and why it worked.",
      "Without a name the last take; a MIDI file of another program goes with --chart."
    })
final class ReviewCommand implements Runnable {
  @Spec CommandSpec spec;

  @Parameters(paramLabel = "TAKE", arity = "0..1", description = "A take's name, or a MIDI file.")
  Optional<String> take = Optional.empty();

  @Option(
      names = "--chart",
      paramLabel = "CHART",
      description = "The chart it was played over; a take has its own.")
  Optional<String> chart = Optional.empty();

  @Option(
      names = "--offset",
      paramLabel = "BEATS",
      converter = ToBeats.class,
      description = {
        "How many beats after the file's start the count-in begins, as a backing begins with it;",
        "before it when negative. Our own takes know."
      })
  double offset;

  @Option(
      names = "--marks",
      paramLabel = "FILE",
      description = "A teacher's marks: where phrases begin, their roles, remarks.")
  Optional<String> marks = Optional.empty();

  @Option(
      names = "--marks-out",
      paramLabel = "FILE",
      description = "Write what the program takes for phrases as such a file, to go on from.")
  Optional<Path> marksOut = Optional.empty();

  @Option(
      names = "--force",
      description = "Replace a file that this program did not write, or that was changed since.")
  boolean force;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public void run() {
    Path notes = notes();
    Chart over = chart(notes);
    Played played = played(notes, over);
    Review review = Review.of(played, over, marks(played));
    if (marksOut.isPresent()) {
      writeMarks(marksOut.get(), review, notes);
      return;
    }
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(ReviewJson.of(review));
    } else {
      Story.of(review).forEach(sentence -> out.println(Printable.line(sentence)));
    }
    out.flush();
  }

  private Played played(Path notes, Chart over) {
    try {
      TakeReader file = TakeReader.read(notes.toFile());
      double beat = over.form().get(0).meter().beatLength().toDouble();
      return Played.of(file, over, over.countIn(), offset * beat);
    } catch (IOException e) {
      throw CommandFailure.wrongInput(e.getMessage());
    }
  }

  private Marks marks(Played played) {
    return marks
        .map(TextFile::read)
        .map(text -> text.then(source -> MarksReader.read(source, played)))
        .map(read -> read.value().orElseThrow(() -> CommandFailure.problems(read.problems())))
        .orElse(Marks.NONE);
  }

  private void writeMarks(Path file, Review review, Path notes) {
    List<Path> inputs = new ArrayList<>(List.of(notes));
    marks.map(FileNames::path).ifPresent(inputs::add);
    OutputFile.write(
            file,
            new Overwriting(inputs, force),
            MarksText.STAMP,
            Map.of(),
            places -> {
              Files.writeString(places.get(0), MarksText.of(review));
              return review.phrases().size() + " phrases";
            })
        .forEach(line -> spec.commandLine().getOut().println(Printable.line(line)));
    spec.commandLine().getOut().flush();
  }

  /** The file of notes: a file as named, a take of that name, or the last take. */
  private Path notes() {
    TakeFiles files = new TakeFiles(Folders.takes());
    if (take.isEmpty()) {
      return last(files);
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

  private static Path last(TakeFiles files) {
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

  private Chart chart(Path notes) {
    String name = notes.getFileName().toString();
    String own = name.substring(0, Math.max(0, name.lastIndexOf('.'))) + TakeFiles.CHART;
    String from = chart.orElseGet(() -> notes.resolveSibling(own).toString());
    if (chart.isEmpty() && !Files.exists(Path.of(from))) {
      throw CommandFailure.wrongInput(
          "Beside " + notes + " there is no " + own + ": say which chart with --chart.");
    }
    return ChartPlaces.read(from);
  }

  /** Reads a number of beats. */
  static final class ToBeats extends DecimalNumber {
    ToBeats() {
      super("number of beats", "one such as 4 or 1.5");
    }
  }
}

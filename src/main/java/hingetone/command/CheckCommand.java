package hingetone.command;

import hingetone.backing.Backing;
import hingetone.chart.Chart;
import hingetone.chart.ChartReader;
import hingetone.chart.Form;
import hingetone.groove.Groove;
import hingetone.groove.GrooveReader;
import hingetone.groove.Grooves;
import hingetone.output.ExitStatus;
import hingetone.phrase.PhraseReader;
import hingetone.phrase.Statement;
import hingetone.print.Json;
import hingetone.text.Printable;
import hingetone.text.reading.Diagnostic;
import hingetone.text.reading.Problems;
import hingetone.text.reading.Reading;
import hingetone.text.reading.Source;
import hingetone.text.reading.TextFile;
import hingetone.text.reading.Yaml;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads charts, grooves and phrases and reports every problem in them. */
@Command(
    name = "check",
    description = {
      "Read charts, grooves and phrases and report every problem, each with its place.",
      "Prints nothing where all is well."
    })
final class CheckCommand implements Callable<Integer> {
  @Spec CommandSpec spec;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      description = "Charts, grooves and files of phrases; - reads standard input.")
  List<String> files;

  @Option(
      names = {"-v", "--verbose"},
      description = "Say for each file what it holds.")
  boolean verbose;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  /**
   * What a file turned out to hold.
   *
   * @param summary what it holds, in a line; empty when it has problems
   */
  private record Checked(String file, String summary, List<Diagnostic> problems) {}

  @Override
  public Integer call() {
    List<Checked> checked = files.stream().map(CheckCommand::check).toList();
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(Json.text(tree(checked)));
    } else {
      out.print(text(checked));
    }
    out.flush();
    boolean fine = checked.stream().allMatch(c -> c.problems().isEmpty());
    return fine ? ExitStatus.FINE : ExitStatus.WRONG_INPUT;
  }

  private String text(List<Checked> checked) {
    List<String> parts = new ArrayList<>();
    for (Checked one : checked) {
      one.problems().forEach(problem -> parts.add(problem.report()));
      if (verbose && one.problems().isEmpty()) {
        parts.add(Printable.line(one.file() + ": " + one.summary()) + "\n");
      }
    }
    boolean reports = checked.stream().anyMatch(c -> !c.problems().isEmpty());
    return String.join(reports ? "\n" : "", parts);
  }

  private static Object tree(List<Checked> checked) {
    return Json.object(
        "files",
        checked.stream()
            .map(
                one ->
                    Json.object(
                        "file", one.file(),
                        "summary", Optional.of(one.summary()).filter(s -> !s.isEmpty()),
                        "problems", one.problems().stream().map(CheckCommand::tree).toList()))
            .toList());
  }

  private static Object tree(Diagnostic problem) {
    boolean placed = !problem.source().text().isEmpty();
    return Json.object(
        "file", problem.source().name(),
        "line", placed ? Optional.of(problem.line()) : Optional.empty(),
        "column", placed ? Optional.of(problem.column()) : Optional.empty(),
        "message", problem.message(),
        "expected", Optional.of(problem.expected()).filter(e -> !e.isEmpty()),
        "suggestion", problem.suggestion());
  }

  private static Checked check(String file) {
    Reading<Source> text = TextFile.read(file);
    if (text.value().isEmpty()) {
      return new Checked(file, "", text.problems());
    }
    Source source = text.value().get();
    Optional<Yaml> document = Yaml.read(new Problems(source));
    if (document.filter(PhraseReader::isPhrases).isPresent()) {
      return phrases(file, source);
    }
    boolean groove = document.filter(GrooveReader::isGroove).isPresent();
    return groove ? groove(file, source) : chart(file, source);
  }

  private static Checked phrases(String file, Source source) {
    Reading<List<Statement>> reading = PhraseReader.read(source);
    return new Checked(
        file,
        reading
            .value()
            .map(List::size)
            .map(n -> n + (n == 1 ? " statement" : " statements"))
            .orElse(""),
        reading.problems());
  }

  private static Checked groove(String file, Source source) {
    Reading<Groove> reading = GrooveReader.read(source, file);
    return new Checked(
        file,
        reading
            .value()
            .map(g -> "a groove, " + g.meterText() + ", " + g.slowest() + " to " + g.fastest())
            .orElse(""),
        reading.problems());
  }

  private static Checked chart(String file, Source source) {
    Reading<Chart> reading = ChartReader.read(source);
    if (reading.value().isEmpty()) {
      return new Checked(file, "", reading.problems());
    }
    Chart chart = reading.value().get();
    Grooves grooves = Folders.grooves().beside(ChartArguments.folder(file));
    List<Diagnostic> problems = Backing.problems(chart, grooves, source);
    return new Checked(file, problems.isEmpty() ? summary(chart) : "", problems);
  }

  private static String summary(Chart chart) {
    String keys =
        chart.form().stream()
            .map(section -> section.key().toString())
            .distinct()
            .collect(Collectors.joining(", "));
    int bars = Form.of(chart).bars().size();
    return "\"" + chart.title() + "\", " + bars + (bars == 1 ? " bar, " : " bars, ") + keys;
  }
}

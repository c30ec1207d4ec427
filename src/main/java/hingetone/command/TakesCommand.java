package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.play.TakeKeeper;
import hingetone.print.Json;
import hingetone.take.TakeFiles;
import hingetone.take.TakeSummary;
import hingetone.text.Printable;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Lists the takes kept; removes one. */
@Command(
    name = "takes",
    description = {
      "List the takes kept, with chart, length and date.",
      "They are plain files in the folder hingetone/takes below XDG_DATA_HOME, or ~/.local/share."
    })
final class TakesCommand implements Runnable {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());

  @Spec CommandSpec spec;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Option(
      names = "--remove",
      paramLabel = "NAME",
      description = "Remove a take's files; asks before it does.")
  Optional<String> remove = Optional.empty();

  @Override
  public void run() {
    TakeFiles files = new TakeFiles(Folders.takes());
    try {
      files
          .finish(TakeKeeper::writeMidi)
          .forEach(name -> tell(name + " was left unfinished; kept."));
      if (remove.isPresent()) {
        remove(files, remove.get());
      } else {
        list(summaries(files));
      }
    } catch (IOException e) {
      throw CommandFailure.couldNot("The takes cannot be read: " + e.getMessage());
    }
  }

  private List<TakeSummary> summaries(TakeFiles files) throws IOException {
    List<TakeSummary> all = new ArrayList<>();
    for (String name : files.names()) {
      try {
        all.add(TakeSummary.of(files, name));
      } catch (IOException e) {
        tell(e.getMessage());
      }
    }
    return all;
  }

  private void list(List<TakeSummary> takes) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(Json.text(Json.object("takes", takes.stream().map(TakesCommand::tree).toList())));
    } else if (takes.isEmpty()) {
      out.println("No takes yet: play --in PORT, and R records.");
    } else {
      out.printf("%-24s %-24s %7s %6s  %s%n", "name", "chart", "length", "notes", "kept");
      takes.forEach(take -> out.println(Printable.line(line(take))));
    }
    out.flush();
  }

  private static Object tree(TakeSummary take) {
    return Json.object(
        "name", take.name(),
        "chart", take.chart().orElse(null),
        "seconds", take.seconds(),
        "notes", take.notes(),
        "kept", take.kept().toString());
  }

  private static String line(TakeSummary take) {
    long seconds = Math.round(take.seconds());
    return String.format(
        Locale.ROOT,
        "%-24s %-24s %4d:%02d %6d  %s",
        take.name(),
        take.chart().orElse("(its chart is missing)"),
        seconds / 60,
        seconds % 60,
        take.notes(),
        DATE.format(take.kept()));
  }

  private void remove(TakeFiles files, String name) throws IOException {
    if (!files.names().contains(name)) {
      throw CommandFailure.wrongInput("There is no take \"" + name + "\"; takes lists them.");
    }
    PrintWriter out = spec.commandLine().getOut();
    out.print(Printable.line("Remove the take " + name + " for good? y or n: "));
    out.flush();
    String answer =
        new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset())).readLine();
    boolean yes = answer != null && answer.strip().equalsIgnoreCase("y");
    if (yes) {
      files.remove(name);
    }
    out.println(yes ? "Removed." : "Kept.");
    out.flush();
  }

  private void tell(String words) {
    PrintWriter err = spec.commandLine().getErr();
    err.println(Printable.line(words));
    err.flush();
  }
}

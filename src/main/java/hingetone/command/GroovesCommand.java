package hingetone.command;

import hingetone.groove.Groove;
import hingetone.groove.Grooves;
import hingetone.output.CommandFailure;
import hingetone.print.Json;
import hingetone.text.Printable;
import hingetone.text.reading.Diagnostic;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Lists the grooves there are: those of the program and those of the user's own folder. */
@Command(
    name = "grooves",
    description = {
      "List the grooves found, with meter, feel and tempo range.",
      "Your own go into the folder hingetone/grooves below XDG_DATA_HOME, or ~/.local/share."
    })
final class GroovesCommand implements Runnable {
  @Spec CommandSpec spec;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public void run() {
    Grooves grooves = Folders.grooves();
    List<Groove> all = grooves.all();
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(Json.text(Json.object("grooves", all.stream().map(GroovesCommand::tree).toList())));
    } else {
      out.printf("%-16s %-9s %-22s %-8s %s%n", "name", "meter", "feel", "tempo", "about");
      all.forEach(groove -> out.println(Printable.line(line(groove))));
    }
    out.flush();
    List<Diagnostic> problems =
        grooves.names().stream().flatMap(name -> grooves.read(name).problems().stream()).toList();
    if (!problems.isEmpty()) {
      throw CommandFailure.problems(problems);
    }
  }

  private static Object tree(Groove groove) {
    return Json.object(
        "name", groove.name(),
        "about", groove.about(),
        "meter", groove.meterText(),
        "feel", groove.feel().toString(),
        "slowest", groove.slowest(),
        "fastest", groove.fastest());
  }

  private static String line(Groove groove) {
    return String.format(
            "%-16s %-9s %-22s %-8s %s",
            groove.name(),
            groove.meterText(),
            groove.feel(),
            groove.slowest() + "-" + groove.fastest(),
            groove.about())
        .stripTrailing();
  }
}

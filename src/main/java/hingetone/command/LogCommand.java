package hingetone.command;

import hingetone.journal.LogEntry;
import hingetone.journal.LogFailure;
import hingetone.journal.LogLines;
import hingetone.journal.PracticeLog;
import hingetone.output.CommandFailure;
import hingetone.print.Json;
import hingetone.print.LogJson;
import hingetone.print.LogText;
import hingetone.text.FileNames;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Shows the practice log; carries it from one machine to another. */
@Command(
    name = "log",
    description = {
      "Show what was practised, how it went, and what to do next.",
      "It is one file, hingetone/log.sqlite below XDG_DATA_HOME, or ~/.local/share."
    })
final class LogCommand implements Runnable {
  @Spec CommandSpec spec;

  @Option(
      names = "--since",
      paramLabel = "DATE",
      converter = ToDate.class,
      description = "Only from this day on: 2026-03-01.")
  Optional<LocalDate> since = Optional.empty();

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Option(
      names = "--export",
      description = "Print the entries as lines of JSON: log --export > FILE.")
  boolean export;

  @Option(
      names = "--import",
      paramLabel = "FILE",
      description = "Add entries that --export wrote; those that are here stay. - reads input.")
  Optional<String> imported = Optional.empty();

  @Override
  public void run() {
    PracticeLog log = new PracticeLog(Folders.log());
    PrintWriter out = spec.commandLine().getOut();
    try {
      if (imported.isPresent()) {
        List<LogEntry> entries = LogLines.read(imported.get(), lines(imported.get()));
        out.println(log.add(entries) + " of " + entries.size() + " entries are new.");
      } else {
        show(entries(log), out);
      }
    } catch (LogFailure e) {
      throw CommandFailure.couldNot(e.getMessage());
    }
    out.flush();
  }

  private List<LogEntry> entries(PracticeLog log) throws LogFailure {
    ZoneId zone = ZoneId.systemDefault();
    return log.entries().stream()
        .filter(
            entry ->
                since.isEmpty() || !entry.start().atZone(zone).toLocalDate().isBefore(since.get()))
        .toList();
  }

  private void show(List<LogEntry> entries, PrintWriter out) {
    if (export) {
      entries.forEach(entry -> out.println(LogLines.of(entry)));
    } else if (json) {
      out.print(Json.text(LogJson.tree(entries, Instant.now(), ZoneId.systemDefault())));
    } else {
      LogText.lines(entries, Instant.now(), ZoneId.systemDefault()).forEach(out::println);
    }
  }

  private static List<String> lines(String file) {
    try {
      return file.equals("-")
          ? new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))
              .lines()
              .toList()
          : Files.readAllLines(FileNames.path(file));
    } catch (IOException e) {
      throw CommandFailure.wrongInput("Cannot read " + file + ": is it there, and a text?");
    }
  }

  /** Reads a day. */
  static final class ToDate implements ITypeConverter<LocalDate> {
    @Override
    public LocalDate convert(String text) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeParseException e) {
        throw new TypeConversionException(
            "\"" + text + "\" is no day: I expected year-month-day, such as 2026-03-01");
      }
    }
  }
}

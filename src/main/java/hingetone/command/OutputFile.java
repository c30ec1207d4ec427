package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.output.Export;
import hingetone.output.FileKind;
import hingetone.output.Overwriting;
import hingetone.text.Printable;
import hingetone.text.Stamp;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The file that a command writes: where, as what, and in place of what. */
final class OutputFile {
  @Spec(Spec.Target.MIXEE)
  CommandSpec spec;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "The file to write; its ending says what it is. - is standard output.")
  Optional<Path> file = Optional.empty();

  @Option(
      names = "--as",
      paramLabel = "KIND",
      converter = FileKind.Named.class,
      description = "What to write, where no ending says it: its ending, without the dot.")
  Optional<FileKind> as = Optional.empty();

  @Option(
      names = "--force",
      description = "Replace a file that this program did not write, or that was changed since.")
  boolean force;

  /** What writes files to the places it is given; says of the first what it holds. */
  interface Writing {
    String into(List<Path> places) throws IOException;
  }

  /** Whether it is standard output. */
  boolean isStandardOutput() {
    return file.filter(path -> path.toString().equals("-")).isPresent();
  }

  /** Whether it is one that keeps what is written to it, and may have others beside it. */
  boolean isFile() {
    return file.isPresent() && !isStandardOutput() && !Export.isStream(file.get());
  }

  /**
   * What is to be written.
   *
   * @param possible the kinds that the command can write
   * @throws CommandFailure when that is not clear
   */
  FileKind kind(List<FileKind> possible) {
    return FileKind.of(
        file.orElseThrow(() -> CommandFailure.wrongInput("Say where to write with -o FILE.")),
        as,
        possible);
  }

  /**
   * Writes all, or changes nothing.
   *
   * @param inputs what the command reads, which is never replaced
   * @param stamp what the file will bear
   * @param beside files beside it with what they will bear
   * @return a line for each file
   * @throws CommandFailure when it must not or cannot be written
   */
  List<String> write(List<Path> inputs, Stamp stamp, Map<Path, Stamp> beside, Writing writing) {
    return write(file.orElseThrow(), new Overwriting(inputs, force), stamp, beside, writing);
  }

  /** Writes a file and others beside it, or changes nothing; a line for each. */
  static List<String> write(
      Path file, Overwriting rule, Stamp stamp, Map<Path, Stamp> beside, Writing writing) {
    boolean standardOutput = file.toString().equals("-");
    String name = standardOutput ? "standard output" : file.toString();
    try (Export export = new Export(rule)) {
      if (standardOutput) {
        export.addStandardOutput();
      } else {
        export.add(file, stamp);
      }
      for (Map.Entry<Path, Stamp> other : beside.entrySet()) {
        export.add(other.getKey(), other.getValue());
      }
      String holds = writing.into(export.unfinished());
      List<String> replaced = export.finish();
      List<String> lines = new ArrayList<>(List.of(name + ": " + holds + replaced.get(0)));
      for (Map.Entry<Path, Stamp> other : beside.entrySet()) {
        String kind = ": a " + other.getValue().kind();
        lines.add(other.getKey() + kind + replaced.get(lines.size()));
      }
      return lines;
    } catch (AccessDeniedException e) {
      throw CommandFailure.couldNot("Cannot write " + name + ": may you write there?");
    } catch (IOException e) {
      throw CommandFailure.couldNot("Cannot write " + name + ": " + e.getMessage());
    }
  }

  /** Tells the player, beside what goes to standard output. */
  void tell(List<String> lines) {
    CommandLine command = spec.commandLine();
    PrintWriter to = isStandardOutput() ? command.getErr() : command.getOut();
    lines.forEach(line -> to.println(Printable.line(line)));
    to.flush();
  }
}

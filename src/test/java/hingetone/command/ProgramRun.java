package hingetone.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/** Runs the program as from a shell, keeping what it writes. */
abstract class ProgramRun {
  final StringWriter out = new StringWriter();
  final StringWriter err = new StringWriter();

  /** Runs a command with its arguments; gives the exit status. */
  final int run(String... args) {
    CommandLine line = Main.commandLine(args);
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(args);
  }
}

package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.output.ExitStatus;
import hingetone.output.StandardOutput;
import hingetone.play.FirstPicture;
import hingetone.sound.MemoryPreferences;
import hingetone.text.FileNames;
import hingetone.text.GatedWriter;
import hingetone.text.OutputCharset;
import hingetone.text.Printable;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.UnmatchedArgumentException;

/** Starts the program and turns whatever goes wrong into a message and an exit status. */
public final class Main {
  private Main() {}

  public static void main(String[] words) {
    MemoryPreferences.install();
    String[] args = FileNames.words(words);
    if (args.length > 0 && args[0].equals("play")) {
      FirstPicture.prepare();
    }
    System.exit(commandLine(args).execute(args));
  }

  /** The whole command line, its output in the characters that the locale names. */
  public static CommandLine commandLine(String... args) {
    CommandLine line = Hingetone.commandLine(args);
    line.setOut(new PrintWriter(StandardOutput.ofThisProgram(), true, charset()));
    line.setErr(new PrintWriter(System.err, true, charset()));
    line.registerConverter(Path.class, FileNames::path);
    line.setExecutionStrategy(Main::run);
    line.setParameterExceptionHandler((problem, words) -> explainUsage(problem));
    line.setExecutionExceptionHandler(
        (problem, command, parsed) -> explain(CommandFailure.of(problem), command));
    line.setUsageHelpAutoWidth(true);
    line.setAbbreviatedOptionsAllowed(false);
    return line;
  }

  private static int run(ParseResult parsed) {
    CommandLine line = parsed.commandSpec().commandLine();
    try {
      int status = gated(parsed);
      line.getOut().flush();
      return status;
    } catch (CommandFailure | Error e) {
      // Help and version are printed outside of every command, and errors are nobody's to handle.
      return explain(CommandFailure.of(e), line);
    }
  }

  /** Help comes out as it is, in its colours; what a command prints goes through the gate. */
  private static int gated(ParseResult parsed) {
    Integer helped = CommandLine.executeHelpRequest(parsed);
    if (helped != null) {
      return helped;
    }
    for (CommandLine command : parsed.asCommandLineList()) {
      if (command.getParent() != null) {
        command.setOut(new GatedWriter(command.getOut()));
        command.setErr(new GatedWriter(command.getErr()));
      }
    }
    return new RunLast().execute(parsed);
  }

  /** Standard output past the gate, for colours; every text in them passes it by itself. */
  static PrintWriter ungatedOut(CommandSpec spec) {
    return spec.root().commandLine().getOut();
  }

  /** Standard error past the gate, for a bar that is drawn over itself. */
  static PrintWriter ungatedErr(CommandSpec spec) {
    return spec.root().commandLine().getErr();
  }

  /** Whether the output takes characters beyond ASCII. */
  static boolean writesUnicode() {
    return OutputCharset.isUnicode(charset());
  }

  private static Charset charset() {
    return OutputCharset.of(System.getenv());
  }

  private static int explainUsage(ParameterException problem) {
    CommandLine command = problem.getCommandLine();
    PrintWriter err = new GatedWriter(command.getErr());
    err.println(Printable.line(problem.getMessage()));
    if (!UnmatchedArgumentException.printSuggestions(problem, err)) {
      err.println("Try " + command.getCommandSpec().qualifiedName() + " --help for what it takes.");
    }
    return ExitStatus.WRONG_INPUT;
  }

  private static int explain(CommandFailure failure, CommandLine command) {
    PrintWriter err = new GatedWriter(command.getErr());
    if (!failure.getMessage().isEmpty()) {
      err.println(failure.getMessage());
    }
    if (isDebugging(command)) {
      failure.printStackTrace(err);
    }
    return failure.status();
  }

  private static boolean isDebugging(CommandLine command) {
    CommandLine root = command;
    while (root.getParent() != null) {
      root = root.getParent();
    }
    Hingetone options = root.getCommand();
    return options.debug;
  }
}

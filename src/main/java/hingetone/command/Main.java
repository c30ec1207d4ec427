package hingetone.command;

import hingetone.sound.MemoryPreferences;
import hingetone.text.GatedWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.UnmatchedArgumentException;

/** Starts the program and turns whatever goes wrong into a message and an exit status. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    MemoryPreferences.install();
    if (args.length > 0 && args[0].equals("play")) {
      FirstPicture.prepare();
    }
    System.exit(commandLine(args).execute(args));
  }

  /** The whole command line, its output in UTF-8 where the terminal takes it. */
  static CommandLine commandLine(String... args) {
    CommandLine line = Hingetone.commandLine(args);
    line.setOut(new PrintWriter(StandardOutput.ofThisProgram(), true, outputCharset()));
    line.setErr(new PrintWriter(System.err, true, outputCharset()));
    line.setExecutionStrategy(Main::run);
    line.setParameterExceptionHandler(Main::explainUsage);
    line.setExecutionExceptionHandler(Main::explainFailure);
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
    } catch (CommandFailure e) {
      // Help and version are printed outside of every command.
      return explain(e, line.getErr());
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

  private static java.nio.charset.Charset outputCharset() {
    String locale =
        firstNonEmpty(System.getenv("LC_ALL"), System.getenv("LC_CTYPE"), System.getenv("LANG"));
    boolean plain = locale.equals("C") || locale.equals("POSIX");
    return plain ? StandardCharsets.US_ASCII : StandardCharsets.UTF_8;
  }

  /** Whether the output takes characters beyond ASCII. */
  static boolean writesUnicode() {
    return !outputCharset().equals(StandardCharsets.US_ASCII);
  }

  private static String firstNonEmpty(String... values) {
    for (String value : values) {
      if (value != null && !value.isEmpty()) {
        return value;
      }
    }
    return "";
  }

  private static int explainUsage(ParameterException problem, String[] args) {
    CommandLine command = problem.getCommandLine();
    PrintWriter err = new GatedWriter(command.getErr());
    err.println(problem.getMessage());
    if (!UnmatchedArgumentException.printSuggestions(problem, err)) {
      err.println("Try " + command.getCommandSpec().qualifiedName() + " --help for what it takes.");
    }
    return ExitStatus.WRONG_INPUT;
  }

  private static int explainFailure(Exception problem, CommandLine command, ParseResult parsed) {
    PrintWriter err = new GatedWriter(command.getErr());
    int status = ExitStatus.FAILED;
    if (problem instanceof CommandFailure failure) {
      status = explain(failure, err);
    } else {
      err.println("hingetone met a fault of its own: " + problem);
      err.println("Please report it with the output of the same command and --debug.");
    }
    if (isDebugging(command)) {
      problem.printStackTrace(err);
    }
    return status;
  }

  private static int explain(CommandFailure failure, PrintWriter err) {
    if (!failure.getMessage().isEmpty()) {
      err.println(failure.getMessage());
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

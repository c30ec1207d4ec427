package hingetone.command;

import java.io.PrintWriter;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Spec;

/** Prints the man page, written from the same declarations that read the command line. */
@Command(
    name = "manual",
    description = {
      "Print the manual page of all commands, for man.",
      "Use: hingetone manual > hingetone.1; man ./hingetone.1"
    })
final class ManualCommand implements Runnable {
  @Spec CommandSpec spec;

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    CommandLine root = spec.root().commandLine();
    out.println(".TH HINGETONE 1 \"\" \"hingetone\" \"User Commands\"");
    out.println(".SH NAME");
    out.println("hingetone \\- " + escaped(description(root)));
    out.println(".SH SYNOPSIS");
    out.println(".B hingetone");
    out.println("COMMAND [ARGUMENTS]");
    out.println(".SH COMMANDS");
    for (CommandLine command : root.getSubcommands().values()) {
      section(out, command);
    }
    out.println(".SH EXIT STATUS");
    out.println("0 fine, 1 the program could not do it, 2 the input or the usage is wrong.");
    out.println("Output that cannot be written is 1, without a word where it is a pipe that");
    out.println("nobody reads any more.");
    out.flush();
  }

  private static void section(PrintWriter out, CommandLine command) {
    Help help = new Help(command.getCommandSpec(), Help.defaultColorScheme(Ansi.OFF));
    out.println(".SS " + command.getCommandName());
    out.println(escaped(description(command)));
    out.println(".PP");
    out.println(".nf");
    out.print(escaped(help.synopsis(0)));
    out.println(".fi");
    for (PositionalParamSpec parameter : command.getCommandSpec().positionalParameters()) {
      entry(out, parameter.paramLabel(), parameter);
    }
    for (OptionSpec option : command.getCommandSpec().options()) {
      String label = option.arity().max() > 0 ? " " + option.paramLabel() : "";
      entry(out, String.join(", ", option.names()) + label, option);
    }
  }

  private static void entry(PrintWriter out, String label, ArgSpec argument) {
    if (argument.hidden()) {
      return;
    }
    out.println(".TP");
    out.println("\\fB" + escaped(label) + "\\fR");
    out.println(escaped(String.join(" ", argument.description())));
  }

  private static String description(CommandLine command) {
    String[] lines = command.getCommandSpec().usageMessage().description();
    return java.util.Arrays.stream(lines).collect(Collectors.joining(" "));
  }

  /** Text made safe for roff: hyphens stay hyphens, no line starts a request. */
  private static String escaped(String text) {
    return text.replace("\\", "\\e").replace("-", "\\-").replaceAll("(?m)^(?=[.'])", "\\\\&");
  }
}

package hingetone.command;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the completion script for bash and zsh. */
@Command(
    name = "completion",
    description = {
      "Print a script that completes commands and options in bash and zsh.",
      "Use: source <(hingetone completion)"
    })
final class CompletionCommand implements Runnable {
  @Spec CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().getOut().print(AutoComplete.bash("hingetone", spec.root().commandLine()));
    spec.commandLine().getOut().flush();
  }
}

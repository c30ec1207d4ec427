package hingetone.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program's root command: without a subcommand it shows what there is. */
@Command(
    name = "hingetone",
    description = "Practise improvising over a loop that moves between two keys.",
    mixinStandardHelpOptions = true,
    scope = ScopeType.INHERIT,
    versionProvider = Hingetone.Version.class,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      PlayCommand.class,
      RenderCommand.class,
      GroovesCommand.class,
      CheckCommand.class,
      MapCommand.class,
      CompletionCommand.class,
      ManualCommand.class,
      PlanCommand.class,
      PortsCommand.class
    })
final class Hingetone implements Runnable {
  @Spec CommandSpec spec;

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Show the stack trace of a failure.")
  boolean debug;

  @Override
  public void run() {
    CommandLine line = spec.commandLine();
    line.usage(line.getOut());
  }

  /** The version that the build wrote into the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Hingetone.class.getPackage().getImplementationVersion();
      return new String[] {"hingetone " + (version == null ? "(unpacked)" : version)};
    }
  }
}

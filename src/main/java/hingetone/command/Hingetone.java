package hingetone.command;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
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
    synopsisSubcommandLabel = "COMMAND")
final class Hingetone implements Runnable {
  private static final Map<String, Supplier<Object>> COMMANDS = new LinkedHashMap<>();

  static {
    COMMANDS.put("play", PlayCommand::new);
    COMMANDS.put("drill", DrillCommand::new);
    COMMANDS.put("render", RenderCommand::new);
    COMMANDS.put("check", CheckCommand::new);
    COMMANDS.put("map", MapCommand::new);
    COMMANDS.put("plan", PlanCommand::new);
    COMMANDS.put("listen", ListenCommand::new);
    COMMANDS.put("transcribe", TranscribeCommand::new);
    COMMANDS.put("review", ReviewCommand::new);
    COMMANDS.put("takes", TakesCommand::new);
    COMMANDS.put("log", LogCommand::new);
    COMMANDS.put("grooves", GroovesCommand::new);
    COMMANDS.put("ports", PortsCommand::new);
    COMMANDS.put("completion", CompletionCommand::new);
    COMMANDS.put("manual", ManualCommand::new);
  }

  /** These speak of all commands. */
  private static final Set<String> NEED_ALL = Set.of("completion", "manual");

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

  /**
   * The whole command line. To know a command takes time, so only the one that is asked for is
   * known, where it is clear which; all others where it is not.
   *
   * @param args what the program is started with
   */
  static CommandLine commandLine(String... args) {
    CommandLine line = new CommandLine(new Hingetone());
    String first = args.length == 0 ? "" : args[0];
    boolean clear = COMMANDS.containsKey(first) && !NEED_ALL.contains(first);
    COMMANDS.forEach(
        (name, command) -> {
          if (!clear || name.equals(first)) {
            line.addSubcommand(name, command.get());
          }
        });
    return line;
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

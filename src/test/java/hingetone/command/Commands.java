package hingetone.command;

import java.util.Set;

/** The commands there are, for tests of other packages. */
public final class Commands {
  private Commands() {}

  public static Set<String> names() {
    return Main.commandLine().getSubcommands().keySet();
  }
}

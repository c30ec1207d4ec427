package hingetone.command;

import hingetone.output.CommandFailure;
import hingetone.play.Performance;
import hingetone.screen.terminal.TerminalScreen;
import java.io.IOException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Before what the band plays: the screen, or lines of text. */
final class ScreenOption {
  @Spec(Spec.Target.MIXEE)
  CommandSpec spec;

  @Option(
      names = "--plain",
      description = "Lines of text instead of the screen: one for each event.")
  boolean plain;

  /**
   * Plays until the player leaves; in lines where there is no terminal.
   *
   * @param fromInput whether the chart came from standard input, which then gives no keys
   */
  void show(Performance performance, boolean fromInput) {
    if (plain || fromInput || !TerminalScreen.isPossible()) {
      performance.inLines(spec.commandLine().getOut(), !fromInput);
      return;
    }
    try {
      performance.onScreen();
    } catch (IOException e) {
      throw CommandFailure.couldNot("This terminal cannot be used: " + e.getMessage());
    }
  }
}

package hingetone.command;

import static org.assertj.core.api.Assertions.assertThat;

import hingetone.output.ExitStatus;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.OptionSpec;

class CommandLineTest extends ProgramRun {
  @Test
  void without_a_command_it_shows_what_there_is() {
    assertThat(run()).isEqualTo(ExitStatus.FINE);
    assertThat(out.toString()).contains("Usage: hingetone").contains("completion");
  }

  @Test
  void a_mistyped_command_is_answered_with_the_nearest_one() {
    assertThat(run("manaul")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("manaul").contains("manual");
  }

  @Test
  void a_wrong_option_is_no_stack_trace_and_exits_with_two() {
    assertThat(run("manual", "--frobnicate")).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("--frobnicate").doesNotContain("\tat ");
  }

  @Test
  void the_manual_page_has_an_entry_for_every_command() {
    assertThat(run("manual")).isEqualTo(ExitStatus.FINE);
    for (String name : Main.commandLine().getSubcommands().keySet()) {
      assertThat(out.toString()).contains(".SS " + name + "\n");
    }
  }

  @Test
  void the_completion_script_knows_every_command() {
    assertThat(run("completion")).isEqualTo(ExitStatus.FINE);
    for (String name : Main.commandLine().getSubcommands().keySet()) {
      assertThat(out.toString()).contains("function _picocli_hingetone_" + name + "(");
    }
  }

  @Test
  void the_list_of_commands_says_of_each_one_whole_sentence() {
    for (CommandLine command : Main.commandLine().getSubcommands().values()) {
      String first = command.getCommandSpec().usageMessage().description()[0];
      assertThat(first).as(command.getCommandName()).endsWith(".").hasSizeLessThanOrEqualTo(80);
    }
  }

  @Test
  void every_command_has_help() {
    for (String name : Main.commandLine().getSubcommands().keySet()) {
      assertThat(run(name, "--help")).as(name).isEqualTo(ExitStatus.FINE);
      assertThat(out.toString()).contains("Usage: hingetone " + name);
    }
  }

  @Test
  void a_port_that_is_not_there_is_told_in_a_line_and_nothing_plays() {
    int status =
        run(
            "play",
            "demo-charts/mill-race.yaml",
            "--plain",
            "--out",
            "no such port",
            "--laps",
            "1");
    assertThat(status).isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).containsIgnoringCase("MIDI output").doesNotContain("fault");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void whatever_a_command_throws_is_two_lines_and_status_1_its_trace_only_when_asked_for(
      boolean debug) {
    for (Throwable thrown : List.of(new IllegalStateException("odd"), new StackOverflowError())) {
      CommandLine line = Main.commandLine();
      line.addSubcommand("odd", new Odd(thrown));
      StringWriter said = new StringWriter();
      line.setErr(new PrintWriter(said, true));
      String[] args = debug ? new String[] {"odd", "--debug"} : new String[] {"odd"};
      assertThat(line.execute(args)).isEqualTo(ExitStatus.FAILED);
      assertThat(said.toString())
          .startsWith("hingetone met a fault of its own: " + thrown + "\nPlease report it");
      assertThat(said.toString().lines().count() > 2).isEqualTo(debug);
    }
  }

  @Command
  private record Odd(Throwable thrown) implements Runnable {
    @Override
    public void run() {
      if (thrown instanceof Error error) {
        throw error;
      }
      throw (RuntimeException) thrown;
    }
  }

  @Test
  void a_value_that_is_none_is_explained_in_our_own_words_whatever_the_option() {
    for (CommandLine command : Main.commandLine().getSubcommands().values()) {
      for (OptionSpec option : command.getCommandSpec().options()) {
        if (option.arity().min() > 0 && !List.of(String.class, Path.class).contains(type(option))) {
          String name = option.longestName();
          int status = run(command.getCommandName(), "demo-charts/mill-race.yaml", name, "x?");
          assertThat(status).as(name).isEqualTo(ExitStatus.WRONG_INPUT);
          assertThat(err.toString()).contains("x?").doesNotContain("is not a", "java", "Exception");
        }
      }
    }
  }

  /** What an option's value is, in the optional or the list that it may be kept in. */
  private static Class<?> type(OptionSpec option) {
    Class<?>[] inner = option.auxiliaryTypes();
    return inner.length > 0 ? inner[inner.length - 1] : option.type();
  }

  @Test
  void a_mistyped_ending_or_groove_is_answered_with_what_there_is() {
    assertThat(run("render", "demo-charts/mill-race.yaml", "-o", "x.midi"))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains(".mid, .wav");
    assertThat(run("render", "demo-charts/mill-race.yaml", "--groove", "gravl-road", "-o", "x.mid"))
        .isEqualTo(ExitStatus.WRONG_INPUT);
    assertThat(err.toString()).contains("Did you mean gravel-road?");
  }

  @Test
  void help_manual_and_completion_are_ascii_and_so_the_same_in_every_locale() {
    for (String name : Main.commandLine().getSubcommands().keySet()) {
      run(name, "--help");
    }
    run("manual");
    run("completion");
    assertThat(out.toString()).isNotEmpty().matches("\\p{ASCII}*");
  }

  @Test
  void every_command_that_takes_a_chart_reports_what_is_wrong_with_it_line_by_line()
      throws IOException {
    String report = Files.readString(Path.of("src/test/resources/broken/riff-of-too-long.report"));
    String chart = "src/test/resources/broken/riff-of-too-long.yaml";
    for (String command : List.of("check", "map", "plan", "render -o x.mid", "play --plain")) {
      String[] args = (command + " " + chart).split(" ");
      assertThat(run(args)).as(command).isEqualTo(ExitStatus.WRONG_INPUT);
      assertThat(out.toString() + err).as(command).contains(report);
      out.getBuffer().setLength(0);
      err.getBuffer().setLength(0);
    }
  }
}

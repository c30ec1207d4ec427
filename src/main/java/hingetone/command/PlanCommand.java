package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.phrase.maker.MadePhrase;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.print.PlanJson;
import hingetone.print.PlanText;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints who speaks when. */
@Command(
    name = "plan",
    description = {
      "Print who speaks when, bar by bar.",
      "Every statement, reply and rest with its pickup, landing and end."
    })
final class PlanCommand implements Runnable {
  @Spec CommandSpec spec;
  @Mixin ChartArguments arguments;

  @Option(
      names = "--laps",
      paramLabel = "N",
      converter = ChartArguments.ToLaps.class,
      description = "How many laps to print, 1 to 1000 (1 unless stated).")
  int laps = 1;

  @Option(names = "--notes", description = "Print an example phrase as tab under each prompt.")
  boolean notes;

  @Option(names = "--json", description = "Print it for other programs.")
  boolean json;

  @Override
  public void run() {
    Chart chart = arguments.read();
    Plan plan = Plan.of(chart, Form.of(chart));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      List<Prompt> prompts =
          IntStream.rangeClosed(1, laps)
              .boxed()
              .flatMap(l -> plan.promptsOfLap(l).stream())
              .toList();
      out.print(PlanJson.of(prompts, ground(chart)));
    } else {
      out.print(
          PlanText.of(
              plan,
              laps,
              notes ? tab(ExamplePhrases.of(chart, arguments.grooves())) : ways(chart)));
    }
    out.flush();
  }

  /** The way over the line that a prompt crosses. */
  private static Function<Prompt, List<String>> ways(Chart chart) {
    Ground ground = ground(chart);
    return prompt -> PlanText.way(prompt, ground).map(List::of).orElse(List.of());
  }

  private static Ground ground(Chart chart) {
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    return Ground.of(Form.of(chart), neck, chart.position());
  }

  private static Function<Prompt, List<String>> tab(ExamplePhrases phrases) {
    return prompt -> {
      MadePhrase made = phrases.maker().make(prompt);
      List<String> lines = new ArrayList<>(phrases.tab(made));
      lines.add(made.why());
      lines.add("");
      return lines;
    };
  }
}

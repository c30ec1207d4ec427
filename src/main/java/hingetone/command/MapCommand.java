package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.neck.PatternNumbers;
import hingetone.output.CommandFailure;
import hingetone.print.InkedLine;
import hingetone.print.Json;
import hingetone.print.MapJson;
import hingetone.print.MapSelection;
import hingetone.print.MapText;
import hingetone.text.Suggestion;
import hingetone.theory.Scale;
import hingetone.theory.ScaleType;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** Prints the ground of a chart: scales with reasons, shapes, and the ways over each crossing. */
@Command(
    name = "map",
    description = {
      "Show the ground of a chart: what fits where, and why.",
      "Sections, chords, the scales that fit, shapes on the neck,",
      "and for each crossing its common tones, holds and runs."
    })
final class MapCommand implements Runnable {
  @Spec CommandSpec spec;
  @Mixin ChartArguments chartArguments;

  @Option(names = "--section", paramLabel = "NAME", description = "Only this section.")
  Optional<String> section = Optional.empty();

  @Option(
      names = "--bar",
      paramLabel = "BAR",
      converter = ToBar.class,
      description = "Only this bar of the form, with every scale that fits.")
  Optional<Integer> bar = Optional.empty();

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      converter = ToScale.class,
      description = "Only the shapes of this scale, such as \"C dorian\".")
  Optional<Scale> scale = Optional.empty();

  @Option(
      names = "--frets",
      paramLabel = "N",
      converter = ToFrets.class,
      description = "Frets on the neck, 12 to 27; 22 unless stated.")
  int frets = Fretboard.USUAL_FRETS;

  @Option(
      names = "--pattern-one",
      paramLabel = "DEGREES",
      defaultValue = "${env:HINGETONE_PATTERN_ONE:-1}",
      converter = ToPatterns.class,
      description = {
        "The degree that pattern 1 starts on, such as b3; more than one, such as \"b3 6\", where",
        "scales have different ones. HINGETONE_PATTERN_ONE in the environment sets it for good."
      })
  PatternNumbers patterns;

  @Option(names = "--json", description = "Print JSON.")
  boolean json;

  @Override
  public void run() {
    Chart chart = chartArguments.read();
    Form form = Form.of(chart);
    check(chart, form);
    Fretboard neck = new Fretboard(chart.tuning(), chart.capo(), frets, chartArguments.leftHanded);
    Ground ground = Ground.of(form, neck, chart.position());
    MapSelection selection = new MapSelection(section, bar, scale, patterns);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.print(Json.text(MapJson.tree(chart, ground, selection)));
    } else {
      int width = spec.usageMessage().width();
      print(MapText.lines(chart, ground, selection, Main.writesUnicode(), width));
    }
    out.flush();
  }

  private void print(List<InkedLine> lines) {
    if (spec.commandLine().getColorScheme().ansi().enabled()) {
      PrintWriter terminal = Main.ungatedOut(spec);
      lines.forEach(line -> terminal.println(line.onTerminal()));
    } else {
      lines.forEach(line -> spec.commandLine().getOut().println(line.plain()));
    }
  }

  private void check(Chart chart, Form form) {
    List<String> names = chart.sections().stream().map(s -> s.name()).toList();
    if (section.isPresent() && !names.contains(section.get())) {
      throw CommandFailure.wrongInput(
          "no section \""
              + section.get()
              + "\": the chart has "
              + String.join(", ", names)
              + "."
              + Suggestion.nearest(section.get(), names)
                  .map(n -> " Did you mean " + n + "?")
                  .orElse(""));
    }
    if (frets - chart.capo() < Fretboard.FEWEST_FREE) {
      throw CommandFailure.wrongInput(
          "a capo at fret " + chart.capo() + " leaves too little of " + frets + " frets.");
    }
    int last = form.bars().size();
    if (bar.isPresent() && bar.get() > last) {
      throw CommandFailure.wrongInput(
          "no bar " + bar.get() + ": the form has bars 1 to " + last + ".");
    }
  }

  /** Reads a scale. */
  static final class ToScale implements ITypeConverter<Scale> {
    @Override
    public Scale convert(String text) {
      List<String> kinds = ScaleType.ALL.stream().map(ScaleType::name).toList();
      String kind = text.strip().replaceFirst("^\\S+\\s*", "");
      return Scale.parse(text.strip())
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\""
                          + text
                          + "\" is no scale: I expected a note and a kind such as C dorian."
                          + Suggestion.nearest(kind, kinds)
                              .map(k -> " Did you mean " + k + "?")
                              .orElse("")));
    }
  }

  /** Reads the number of a bar. */
  static final class ToBar extends WholeNumber {
    ToBar() {
      super(1, 9999, "a bar");
    }
  }

  /** Reads the degrees that number 1 starts on. */
  static final class ToPatterns implements ITypeConverter<PatternNumbers> {
    @Override
    public PatternNumbers convert(String text) {
      return PatternNumbers.parse(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "\"" + text + "\" is no degree: I expected one such as b3, or \"b3 6\""));
    }
  }

  /** Reads the number of frets. */
  static final class ToFrets extends WholeNumber {
    ToFrets() {
      super(12, Fretboard.MOST_FRETS, "frets");
    }
  }
}

package hingetone.command;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.Section;
import hingetone.groove.Grooves;
import hingetone.ground.Ground;
import hingetone.neck.Fretboard;
import hingetone.output.CommandFailure;
import hingetone.phrase.Statement;
import hingetone.phrase.maker.LeadPart;
import hingetone.phrase.maker.MadePhrase;
import hingetone.phrase.maker.PhraseMaker;
import hingetone.plan.ExampleChoice;
import hingetone.plan.Plan;
import hingetone.print.TabText;
import hingetone.text.Suggestion;
import hingetone.text.reading.Reading;
import hingetone.time.Beats;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.Stack;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import picocli.CommandLine.IParameterPreprocessor;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.TypeConversionException;

/**
 * A chart's plan with a maker of example phrases for it.
 *
 * @param plan the plan
 * @param neck the neck they are played on
 * @param maker the maker
 */
record ExamplePhrases(Plan plan, Fretboard neck, PhraseMaker maker) {
  private static final int SWINGS = 55;

  /**
   * The example phrases of a chart, made and from the bank.
   *
   * @throws CommandFailure with the reports when a file of the bank has problems
   */
  static ExamplePhrases of(Chart chart, Grooves grooves) {
    Form form = Form.of(chart);
    Plan plan = Plan.of(chart, form);
    Fretboard neck = Fretboard.of(chart.tuning(), chart.capo());
    Reading<List<Statement>> bank = Folders.bank().read();
    List<Statement> statements =
        bank.value().orElseThrow(() -> CommandFailure.problems(bank.problems()));
    Set<Section> swinging =
        chart.form().stream().filter(s -> swings(s, grooves)).collect(Collectors.toSet());
    PhraseMaker maker =
        PhraseMaker.of(plan, Ground.of(form, neck, chart.position()), chart.seed())
            .withBank(statements, swinging::contains)
            .withFluency(chart.fluency());
    return new ExamplePhrases(plan, neck, maker);
  }

  /** As the section says it, else as its groove does. */
  private static boolean swings(Section section, Grooves grooves) {
    String groove = section.groove().orElse(Grooves.PLAIN);
    return section
            .swing()
            .or(() -> grooves.read(groove).value().map(g -> g.feel().percent()))
            .orElse(0)
        >= SWINGS;
  }

  /** The phrases as a part, played in the feel of a band. */
  LeadPart lead(UnaryOperator<Beats> played) {
    return new LeadPart(plan, maker, played);
  }

  /** A phrase as rows of tab. */
  List<String> tab(MadePhrase made) {
    return TabText.of(plan.form(), neck, made);
  }

  private static List<String> choices() {
    return Arrays.stream(ExampleChoice.values()).map(ExampleChoice::toString).toList();
  }

  /** Where the option stands alone, leaves the word behind it, a chart's name, to others. */
  static final class AllUnlessStated implements IParameterPreprocessor {
    @Override
    public boolean preprocess(
        Stack<String> words, CommandSpec command, ArgSpec option, Map<String, Object> about) {
      boolean attached = "=".equals(about.get("separator"));
      if (!attached && (words.isEmpty() || !choices().contains(words.peek()))) {
        words.push(ExampleChoice.ALL.toString());
      }
      return false;
    }
  }

  /** Reads which phrases are shown. */
  static final class ToShown implements ITypeConverter<ExampleChoice> {
    @Override
    public ExampleChoice convert(String text) {
      List<String> known = choices();
      int found = known.indexOf(text.toLowerCase(Locale.ROOT));
      if (found < 0) {
        String hint =
            Suggestion.nearest(text, known).map(w -> ". Did you mean " + w + "?").orElse("");
        throw new TypeConversionException(
            "\"" + text + "\": I expected " + String.join(", ", known) + hint);
      }
      return ExampleChoice.values()[found];
    }
  }
}

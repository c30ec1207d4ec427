package hingetone.drill;

import static hingetone.chart.PhraseTurn.Role.REPLY;
import static hingetone.chart.PhraseTurn.Role.STATEMENT;

import hingetone.chart.Chart;
import hingetone.chart.Leave;
import hingetone.chart.PhraseTurn;
import hingetone.journal.Activity;
import hingetone.time.Beats;
import java.util.List;
import java.util.Optional;

/**
 * What an exercise asks with a chart.
 *
 * @param goal in one sentence
 * @param levels from the easiest to the hardest, all with the same bars
 * @param machineAsks whether the machine plays every statement, and not only in the example
 */
public record Exercise(Activity activity, String goal, List<Level> levels, boolean machineAsks) {

  /**
   * One level.
   *
   * @param words what is special about it
   * @param chart the chart that is played
   * @param silentBars after how many bars the band falls silent for as many; 0 for never
   */
  public record Level(String words, Chart chart, int silentBars) {}

  public Exercise {
    levels = List.copyOf(levels);
    if (!activity.isDrill() || levels.isEmpty()) {
      throw new IllegalArgumentException("no exercise: " + activity);
    }
  }

  /** Whether a chart is enough for an exercise; else the reason in a sentence. */
  public static Optional<String> problem(Activity activity, Chart chart) {
    return activity == Activity.CROSSING && DrillChart.keys(chart) < 2
        ? Optional.of("This chart stays in one key, so there is no crossing to drill.")
        : Optional.empty();
  }

  /**
   * An exercise with a chart.
   *
   * @throws IllegalArgumentException where {@link #problem} has a reason
   */
  public static Exercise of(Activity activity, Chart chart) {
    return switch (activity) {
      case LANDING -> landing(chart);
      case CROSSING -> crossing(chart);
      case EXCHANGE -> exchange(chart);
      case ENDINGS -> endings(chart);
      case OFFSET -> offset(chart);
      case OCTAVE -> octave(chart);
      case SILENCE -> silence(chart);
      case EAR -> ear(chart);
      default -> throw new IllegalArgumentException("no exercise: " + activity);
    };
  }

  private static Level level(String words, Chart chart) {
    return new Level(words, chart, 0);
  }

  private static PhraseTurn turn(PhraseTurn.Role role, int bars) {
    return new PhraseTurn(role, bars, false);
  }

  private static PhraseTurn again(int bars) {
    return new PhraseTurn(STATEMENT, bars, true);
  }

  private static Exercise landing(Chart chart) {
    List<PhraseTurn> statements = List.of(turn(STATEMENT, 2));
    return new Exercise(
        Activity.LANDING,
        "Lead into each landing with a pickup, and put the main note on beat 1.",
        List.of(
            level("a pickup of half a beat", DrillChart.with(chart, statements, Beats.of(1, 2))),
            level("a pickup of a beat", DrillChart.with(chart, statements, Beats.ONE)),
            level(
                "a pickup of a beat and a half",
                DrillChart.with(chart, statements, Beats.of(3, 2))),
            level("a pickup of two beats", DrillChart.with(chart, statements, Beats.of(2)))),
        false);
  }

  private static Exercise crossing(Chart chart) {
    Chart around = DrillChart.aroundTheFirstCrossing(chart);
    return new Exercise(
        Activity.CROSSING,
        "Go over each change of key as you are told: on one note held, or in a run.",
        List.of(
            level("hold one note over it", DrillChart.leaving(around, Leave.HOLD)),
            level("run into it", DrillChart.leaving(around, Leave.RUN)),
            level("hold and run in turn", DrillChart.leaving(around, Leave.HOLD, Leave.RUN))),
        false);
  }

  private static Exercise exchange(Chart chart) {
    return new Exercise(
        Activity.EXCHANGE,
        "Answer each statement: take something of it up, close it, and stop in time.",
        List.of(
            level("two bars each", DrillChart.with(chart, turn(STATEMENT, 2), turn(REPLY, 2))),
            level("a bar each", DrillChart.with(chart, turn(STATEMENT, 1), turn(REPLY, 1))),
            level(
                "two replies, and another one each time",
                DrillChart.with(chart, turn(STATEMENT, 2), turn(REPLY, 1), turn(REPLY, 1)))),
        false);
  }

  private static Exercise endings(Chart chart) {
    return new Exercise(
        Activity.ENDINGS,
        "Keep one opening, and give it another ending each time.",
        List.of(
            level("two bars each", DrillChart.with(chart, turn(STATEMENT, 2), again(2))),
            level(
                "four endings for one opening",
                DrillChart.with(chart, turn(STATEMENT, 2), again(2), again(2), again(2))),
            level("a bar each", DrillChart.with(chart, turn(STATEMENT, 1), again(1)))),
        false);
  }

  private static Exercise offset(Chart chart) {
    return new Exercise(
        Activity.OFFSET,
        "Repeat a figure that is not as long as the bar, in eighths without a gap.",
        List.of(
            level("a figure of three", chart),
            level("a figure of five", chart),
            level("a figure of seven", chart)),
        false);
  }

  private static Exercise octave(Chart chart) {
    return new Exercise(
        Activity.OCTAVE,
        "Say it, then say the same an octave away.",
        List.of(
            level("two bars each", DrillChart.with(chart, turn(STATEMENT, 2), again(2))),
            level("a bar each", DrillChart.with(chart, turn(STATEMENT, 1), again(1)))),
        false);
  }

  private static Exercise silence(Chart chart) {
    return new Exercise(
        Activity.SILENCE,
        "Play on while the band is silent, and be there when it comes back.",
        List.of(
            new Level("one bar of silence", chart, 1),
            new Level("two bars of silence", chart, 2),
            new Level("four bars of silence", chart, 4)),
        false);
  }

  private static Exercise ear(Chart chart) {
    return new Exercise(
        Activity.EAR,
        "Listen, then play the same notes.",
        List.of(
            level("a bar each", DrillChart.with(chart, turn(STATEMENT, 1), turn(REPLY, 1))),
            level("two bars each", DrillChart.with(chart, turn(STATEMENT, 2), turn(REPLY, 2)))),
        true);
  }
}

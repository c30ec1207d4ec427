package hingetone.print;

import hingetone.chart.ChartBar;
import hingetone.chart.Form;
import hingetone.chart.Form.Bar;
import hingetone.chart.Leave;
import hingetone.ground.Ground;
import hingetone.ground.ways.WayWords;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.plan.Speaker;
import hingetone.text.Choice;
import hingetone.time.Beats;
import hingetone.time.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A plan for people, bar by bar: the chords, and beside them who speaks, lands and stops on which
 * beat.
 */
public final class PlanText {
  private final Plan plan;
  private final int laps;
  private final Function<Prompt, List<String>> under;
  private final List<Prompt> prompts = new ArrayList<>();
  private final StringBuilder out = new StringBuilder();

  private PlanText(Plan plan, int laps, Function<Prompt, List<String>> under) {
    this.plan = plan;
    this.laps = laps;
    this.under = under;
    for (int lap = 1; lap <= laps + 1; lap++) {
      prompts.addAll(plan.promptsOfLap(lap));
    }
  }

  /**
   * The text of the first laps of a plan.
   *
   * @param under what is printed under the bar in which a prompt lands: its tab, or nothing
   */
  public static String of(Plan plan, int laps, Function<Prompt, List<String>> under) {
    return new PlanText(plan, laps, under).text();
  }

  private String text() {
    Form form = plan.form();
    int first = Math.min(1, prompts.get(0).speakFrom().bar());
    for (int number = first; number <= laps * form.bars().size(); number++) {
      if (number < 1) {
        addBar(number, "count-in");
        continue;
      }
      Bar bar = form.bar(number);
      if (bar.isFirstOfSection()) {
        boolean newLap = bar.number() == 1 && laps > 1;
        out.append(newLap ? "lap " + form.lapOf(number) + "\n" : "");
        out.append(bar.section().name()).append(", ").append(bar.key()).append('\n');
      }
      addBar(number, chords(bar));
    }
    return out.toString();
  }

  private void addBar(int number, String chords) {
    List<String> events = new ArrayList<>();
    List<String> below = new ArrayList<>();
    for (Prompt prompt : prompts) {
      if (prompt.speakFrom().bar() == number) {
        events.add(at(prompt.speakFrom()) + opening(prompt));
      }
      if (!prompt.isRest() && prompt.landOn().bar() == number) {
        events.add(at(prompt.landOn()) + "land");
        below.addAll(under.apply(prompt));
      }
      if (prompt.stopBy().bar() == number && !prompt.isRest()) {
        events.add(at(prompt.stopBy()) + "stop");
      }
    }
    String row = String.format("%5d  %-18s %s", number, chords, String.join("; ", events));
    out.append(row.stripTrailing()).append('\n');
    below.forEach(line -> out.append(("       " + line).stripTrailing()).append('\n'));
  }

  /** {@code 3} or {@code & of 3}. */
  private static String at(Position position) {
    String counted = position.counted();
    return counted.substring(counted.indexOf(' ') + 1) + " ";
  }

  private static String opening(Prompt prompt) {
    String by = prompt.by() == Speaker.MACHINE ? ", the machine" : "";
    String again = prompt.again().map(i -> ", " + i + " again, new ending").orElse("");
    String to = prompt.repliesTo().map(i -> " to " + i).orElse("");
    String way =
        prompt
            .crossing()
            .map(w -> w == Leave.RUN ? ", run over the line" : ", hold over the line")
            .orElse("");
    String role = Choice.word(prompt.role());
    return prompt.isRest() ? "rest" : role + " " + prompt.index() + to + again + way + by;
  }

  /** The way over the line that a prompt crosses; empty where it crosses none. */
  public static Optional<String> way(Prompt prompt, Ground ground) {
    return prompt.crossing().flatMap(way -> WayWords.of(ground.crossingOf(prompt.landOn()), way));
  }

  private static String chords(Bar bar) {
    StringBuilder text = new StringBuilder();
    for (ChartBar.Slot slot : bar.chords().chords()) {
      text.append(text.isEmpty() ? "" : " ");
      text.append(slot.chord().map(Object::toString).orElse("N.C."));
      boolean divides = bar.chords().chords().size() > 1;
      for (long beat = 1; divides && Beats.of(beat).isBefore(slot.beats()); beat++) {
        text.append(" /");
      }
    }
    return text.toString();
  }
}

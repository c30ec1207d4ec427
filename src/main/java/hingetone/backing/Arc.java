package hingetone.backing;

import hingetone.chart.Chart;
import hingetone.chart.Form;
import hingetone.chart.PhraseTurn;
import hingetone.chart.Section;
import hingetone.plan.Plan;
import hingetone.plan.Prompt;
import hingetone.score.Fullness;
import hingetone.time.Position;
import java.util.List;

/**
 * The band's intensity over time: bar by bar by the plan and the form, and in slow waves over the
 * laps. It is the same for the same chart and seed.
 *
 * @param form the form
 * @param plan who speaks when
 */
record Arc(Form form, Plan plan) {
  /** How full a band plays from lap to lap where the chart leaves it normal. */
  private static final List<Fullness> WAVE =
      List.of(
          Fullness.NORMAL,
          Fullness.NORMAL,
          Fullness.FULL,
          Fullness.NORMAL,
          Fullness.LIGHT,
          Fullness.NORMAL,
          Fullness.FULL,
          Fullness.FULL);

  /** At most so many bars of a section, and no more than a quarter of it, build or drop. */
  private static final int LINE_BARS = 2;

  static Arc of(Chart chart, Form form) {
    return new Arc(form, Plan.of(chart, form));
  }

  /** How full the band plays a section in a lap; what the chart asks for holds. */
  static Fullness band(Section section, int lap) {
    boolean free = section.band() == Fullness.NORMAL;
    return free ? WAVE.get((lap - 1) % WAVE.size()) : section.band();
  }

  /** What is done in each bar of a lap, from 1. */
  List<Moment> moments(int lap) {
    List<Prompt> prompts = plan.promptsOfLap(lap);
    return form.bars().stream().map(bar -> moment(bar, lap, prompts)).toList();
  }

  private Moment moment(Form.Bar bar, int lap, List<Prompt> prompts) {
    int bars = bar.section().bars().size();
    int lineBars = Math.min(LINE_BARS, bars / 4);
    int first = bar.number() - bar.inSection() + 1;
    int counted = (lap - 1) * form.bars().size() + bar.number();
    boolean leaves = bar.inSection() > bars - lineBars;
    if (leaves && !form.bar(first + bars).key().equals(bar.key())) {
      return Moment.BUILD;
    }
    boolean arrives = bar.inSection() <= lineBars && counted > bar.inSection();
    if (arrives && !before(first).key().equals(bar.key())) {
      return Moment.DROP;
    }
    if (prompts.stream().anyMatch(p -> isReply(p) && endsIn(p, counted))) {
      return Moment.LIFT;
    }
    return prompts.stream().anyMatch(p -> states(p, counted)) ? Moment.ROOM : Moment.PLAIN;
  }

  private Form.Bar before(int first) {
    return form.bar(first > 1 ? first - 1 : form.bars().size());
  }

  private static boolean isReply(Prompt prompt) {
    return prompt.role() == PhraseTurn.Role.REPLY;
  }

  private static boolean endsIn(Prompt prompt, int bar) {
    return prompt.stopBy().compareTo(Position.of(bar, 1)) > 0
        && prompt.stopBy().compareTo(Position.of(bar + 1, 1)) <= 0;
  }

  private static boolean states(Prompt prompt, int bar) {
    return prompt.role() == PhraseTurn.Role.STATEMENT
        && prompt.landOn().bar() <= bar
        && prompt.stopBy().compareTo(Position.of(bar, 1)) > 0;
  }
}

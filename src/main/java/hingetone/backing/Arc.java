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
import java.util.OptionalInt;

/**
 * The band's intensity over time: bar by bar by the plan and the form, and in slow waves over the
 * laps, which climb to a high point near the end where the end is known. It is the same for the
 * same chart and seed.
 *
 * @param form the form
 * @param plan who speaks when
 * @param laps after how many laps the playing ends; empty where nobody knows
 */
record Arc(Form form, Plan plan, OptionalInt laps) {
  /** How much is given in a lap, from 1, by a band that nobody tells when it ends. */
  private static final double[] WAVE = {
    0, .25, .5, .25, 0, -.25, -.5, -.25, 0, .25, .5, .75, 1, .75, .5, .25
  };

  /** What a piece with a known end starts from, and at most climbs from lap to lap. */
  private static final double LOW = -0.25;

  private static final double STEEPEST = 0.35;

  /** After the high point. */
  private static final double FALL = 0.25;

  /** A swell on the way to the high point, in laps and in height; it dies down as that nears. */
  private static final double SWELL_LAPS = 6;

  private static final double SWELL = 0.3;

  /** At most so many bars of a section, and no more than a quarter of it, build or drop. */
  private static final int LINE_BARS = 2;

  static Arc of(Chart chart, Form form) {
    return new Arc(form, Plan.of(chart, form), OptionalInt.empty());
  }

  /** The same where the playing ends after so many laps. */
  Arc over(int laps) {
    return new Arc(form, plan, OptionalInt.of(laps));
  }

  /**
   * How much the band gives in a section in a lap, from −1 (light) over 0 (normal) to 1 (full);
   * what the chart asks for holds.
   */
  double level(Section section, int lap) {
    return switch (section.band()) {
      case LIGHT -> -1;
      case NORMAL -> laps.isPresent() ? climb(lap, laps.getAsInt()) : wave(lap);
      case FULL -> 1;
    };
  }

  private static double wave(int lap) {
    return WAVE[(lap - 1) % WAVE.length];
  }

  /** Up to the last lap but one, in a short piece to the last one, which stays lower. */
  private static double climb(int lap, int laps) {
    int top = laps < 4 ? laps : laps - 1;
    double high = Math.min(1, (laps - 1) / 4.0);
    if (lap >= top) {
      return lap == top ? high : high - FALL;
    }
    double low = Math.max(LOW, high - STEEPEST * (top - 1));
    double way = (lap - 1.0) / (top - 1);
    double swell = SWELL * Math.sin(2 * Math.PI * (lap - 1) / SWELL_LAPS) * (1 - way);
    return Math.max(-1, Math.min(high, low + (high - low) * way + (top > 4 ? swell : 0)));
  }

  /**
   * What the band plays in a bar: between normal and full the last bars of each section are full,
   * more of them the more is given; between light and normal the first ones are light.
   */
  Fullness band(Form.Bar bar, int lap) {
    double level = level(bar.section(), lap);
    int bars = bar.section().bars().size();
    long share = Math.round(Math.abs(level) * bars);
    if (level > 0 && bar.inSection() > bars - share) {
      return Fullness.FULL;
    }
    return level < 0 && bar.inSection() <= share ? Fullness.LIGHT : Fullness.NORMAL;
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

package hingetone.backing;

import hingetone.chart.Form;
import hingetone.groove.Pattern;
import hingetone.score.Fullness;
import java.util.List;
import java.util.Random;

/**
 * Chooses what a player plays, with a memory: one pattern for a section, in phrases of two, four or
 * eight bars, kept as often as the groove says; another, rather a busy one, in a phrase's last bar
 * where it is not kept. When the section comes back its pattern does too, for four laps.
 *
 * <p>The players choose together: where their patterns are weighted alike, the first pattern of one
 * comes with the first of the others.
 *
 * <p>The choice for a bar depends on nothing but the seed and the bar, so that a lap may be made by
 * itself.
 */
final class PatternChoice<P extends Pattern> {
  /** Laps after which a player may settle on another pattern. */
  private static final int LAPS_KEPT = 4;

  /** Phrase lengths in bars; four is the usual one. */
  private static final int[] PHRASES = {4, 4, 4, 4, 4, 2, 8, 8};

  /** How many patterns are drawn of which the busiest is played, where the music leads on. */
  private static final int BUSIEST_OF = 4;

  private static final int BUSIER_OF = 2;

  private final List<P> patterns;
  private final Dice dice;

  /**
   * @param patterns what the player has
   * @param dice the lap's chance
   */
  PatternChoice(List<P> patterns, Dice dice) {
    this.patterns = patterns;
    this.dice = dice;
  }

  /** A pattern, and which of its bars is played, from 0. */
  record Drawn<P>(P pattern, int bar) {}

  /** What is played in a bar. */
  Drawn<P> at(BarPlan plan) {
    Form.Bar bar = plan.bar();
    Dice settled = new Dice(dice.seed(), (dice.lap() - 1) / LAPS_KEPT);
    int phrase = phrase(settled.at("phrase " + bar.section().name(), 0), plan);
    Random ofSection = settled.at("pattern " + bar.section().name(), 0);
    List<P> fitting = fitting(plan);
    P kept = draw(fitting, ofSection, 1, plan);
    int inPhrase = (bar.inSection() - 1) % phrase;
    boolean last = inPhrase == phrase - 1 || plan.leadsOn();
    Random ofBar = dice.at("varies", bar.number());
    if (!varies(plan, last, ofBar)) {
      return new Drawn<>(kept, inPhrase % kept.length());
    }
    P other =
        plan.turnaround()
            ? draw(fitting, ofBar, BUSIEST_OF, plan)
            : draw(others(fitting, kept), ofBar, last ? BUSIER_OF : 1, plan);
    return new Drawn<>(other, Math.min(inPhrase, other.length() - 1));
  }

  /** A phrase that goes into the section's bars, or the shortest. */
  private static int phrase(Random chance, BarPlan plan) {
    int phrase = PHRASES[chance.nextInt(PHRASES.length)];
    int bars = plan.bar().section().bars().size();
    return phrase > bars || bars % phrase > 0 && bars % 2 == 0 ? 2 : phrase;
  }

  /**
   * In a phrase's last bar three times as readily as inside it, in a turnaround always, and never
   * where there must be room.
   */
  private static boolean varies(BarPlan plan, boolean last, Random chance) {
    int percent = plan.moment() == Moment.ROOM ? 0 : 100 - plan.groove().keep();
    return plan.turnaround() || chance.nextInt(100) < (last ? 3 * percent : percent);
  }

  private static <P> List<P> others(List<P> fitting, P kept) {
    List<P> others = fitting.stream().filter(pattern -> !pattern.equals(kept)).toList();
    return others.isEmpty() ? fitting : others;
  }

  private P draw(List<P> fitting, Random chance, int draws, BarPlan plan) {
    P chosen = draw(fitting, chance);
    for (int more = 1; more < draws; more++) {
      P other = draw(fitting, chance);
      boolean busier = strokes(other, plan) > strokes(chosen, plan);
      chosen = busier ? other : chosen;
    }
    return chosen;
  }

  private static int strokes(Pattern pattern, BarPlan plan) {
    return pattern.strokes(plan.bar().meter());
  }

  private P draw(List<P> fitting, Random chance) {
    int total = fitting.stream().mapToInt(pattern -> pattern.use().weight()).sum();
    int left = chance.nextInt(total);
    for (P pattern : fitting) {
      left -= pattern.use().weight();
      if (left < 0) {
        return pattern;
      }
    }
    return fitting.get(fitting.size() - 1);
  }

  /** Those meant for this fullness where there are any, else those meant for all, else all. */
  List<P> fitting(BarPlan plan) {
    List<P> drawn = patterns.stream().filter(p -> p.use().fits(plan.bar().meter())).toList();
    List<P> special = drawn.stream().filter(p -> p.use().isMeantFor(plan.band())).toList();
    if (plan.band() != Fullness.NORMAL && !special.isEmpty()) {
      return special;
    }
    List<P> fitting =
        drawn.stream()
            .filter(p -> p.use().band().isEmpty() || p.use().isMeantFor(plan.band()))
            .toList();
    return fitting.isEmpty() ? drawn : fitting;
  }
}

package hingetone.backing;

import hingetone.groove.Pattern;
import hingetone.score.Fullness;
import hingetone.time.Meter;
import java.util.List;
import java.util.Random;

/**
 * Chooses what a player plays bar after bar: by weight, less willingly the same again, and the
 * busiest of several draws where a section leads on to the next or turns around.
 */
final class PatternChoice<P extends Pattern> {
  private final List<P> patterns;
  private P current;
  private int barsPlayed;
  private int timesInARow;

  PatternChoice(List<P> patterns) {
    this.patterns = patterns;
  }

  /** The pattern of a bar; {@link #bar()} then says which of the pattern's bars it is. */
  P next(BarPlan plan, Random chance) {
    boolean running =
        current != null
            && barsPlayed + 1 < current.length()
            && plan.bar().inSection() > 1
            && fitting(plan).contains(current);
    if (running) {
      barsPlayed++;
      return current;
    }
    P chosen = choose(plan, chance);
    timesInARow = chosen.equals(current) ? timesInARow + 1 : 0;
    current = chosen;
    barsPlayed = 0;
    return chosen;
  }

  /** Which bar of the current pattern is played, from 0. */
  int bar() {
    return barsPlayed;
  }

  private P choose(BarPlan plan, Random chance) {
    List<P> fitting = fitting(plan);
    int draws = plan.turnaround() ? 4 : plan.leadsOn() ? 2 : 1;
    P chosen = draw(fitting, chance);
    for (int more = 1; more < draws; more++) {
      P other = draw(fitting, chance);
      Meter meter = plan.bar().meter();
      chosen = other.strokes(meter) > chosen.strokes(meter) ? other : chosen;
    }
    return chosen;
  }

  private P draw(List<P> fitting, Random chance) {
    double total = fitting.stream().mapToDouble(this::weight).sum();
    double left = chance.nextDouble() * total;
    for (P pattern : fitting) {
      left -= weight(pattern);
      if (left < 0) {
        return pattern;
      }
    }
    return fitting.get(fitting.size() - 1);
  }

  private double weight(P pattern) {
    return pattern.use().weight() / (pattern.equals(current) ? 1.5 + timesInARow : 1.0);
  }

  /** Those meant for this fullness where there are any, else those meant for all, else all. */
  private List<P> fitting(BarPlan plan) {
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

package hingetone.backing;

import hingetone.groove.Pattern;
import hingetone.groove.Thickness;
import java.util.List;
import java.util.Random;

/**
 * Chooses what a player plays bar after bar: by weight, less willingly the same again, and busier
 * where a section leads on to the next.
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
    P first = draw(fitting, chance);
    P second = draw(fitting, chance);
    boolean busier = second.strokes(plan.bar().meter()) > first.strokes(plan.bar().meter());
    return plan.leadsOn() && busier ? second : first;
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

  /** Those meant for this fullness where there are any, else those meant for all. */
  private List<P> fitting(BarPlan plan) {
    List<P> drawn = patterns.stream().filter(p -> p.use().fits(plan.bar().meter())).toList();
    Thickness band = plan.band();
    List<P> special =
        drawn.stream().filter(p -> p.use().band().filter(band::equals).isPresent()).toList();
    if (!special.isEmpty() && band != Thickness.NORMAL) {
      return special;
    }
    return drawn.stream().filter(p -> p.use().band().map(band::equals).orElse(true)).toList();
  }
}

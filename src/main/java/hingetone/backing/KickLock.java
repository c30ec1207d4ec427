package hingetone.backing;

import hingetone.groove.BassStyle;
import hingetone.groove.DrumPattern;
import hingetone.groove.LinePattern;
import hingetone.score.Note;
import hingetone.time.Beats;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The bass listens to the bass drum: where the pattern that was drawn for it strikes with fewer of
 * the bass drum's strokes than the groove asks, it plays the one of its patterns that strikes with
 * the most. In a turnaround it is free.
 *
 * @param plan the bar
 * @param dice the lap's chance
 */
record KickLock(BarPlan plan, Dice dice) {
  /** What the bass plays in the bar. */
  PatternChoice.Drawn<LinePattern> line() {
    PatternChoice<LinePattern> choice = new PatternChoice<>(plan.groove().bass().patterns(), dice);
    PatternChoice.Drawn<LinePattern> drawn = choice.at(plan);
    Set<Beats> kicks = kicks();
    long wanted = (long) plan.groove().bass().withKickPercent() * kicks.size();
    if (plan.turnaround() || 100 * together(drawn, kicks) >= wanted) {
      return drawn;
    }
    PatternChoice.Drawn<LinePattern> best = drawn;
    for (LinePattern pattern : choice.fitting(plan)) {
      PatternChoice.Drawn<LinePattern> other =
          new PatternChoice.Drawn<>(pattern, drawn.bar() % pattern.length());
      best = together(other, kicks) > together(best, kicks) ? other : best;
    }
    return best;
  }

  /** Where the drummer's pattern has the bass drum, from the bar line. */
  private Set<Beats> kicks() {
    PatternChoice.Drawn<DrumPattern> drums =
        new PatternChoice<>(plan.groove().drums().patterns(), dice).at(plan);
    return drums.pattern().strokes(drums.bar(), plan.bar().meter()).stream()
        .filter(Drummer::isBassDrum)
        .map(Note::onset)
        .collect(Collectors.toSet());
  }

  private long together(PatternChoice.Drawn<LinePattern> line, Set<Beats> kicks) {
    String signs = line.pattern().strip().signs(line.bar(), plan.bar().meter());
    return DrawnNote.read(signs, plan, List.of()).stream()
        .filter(note -> note.sign() != BassStyle.DEAD)
        .filter(note -> kicks.contains(note.inBar()))
        .count();
  }
}

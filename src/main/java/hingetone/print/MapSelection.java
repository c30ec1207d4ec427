package hingetone.print;

import hingetone.chart.Form;
import hingetone.neck.PatternNumbers;
import hingetone.theory.Scale;
import java.util.Optional;

/**
 * Which part of a map to show.
 *
 * @param section only this section
 * @param bar only this bar of the lap
 * @param scale the shapes of this scale instead of those that fit
 * @param patterns how shapes are numbered
 */
public record MapSelection(
    Optional<String> section,
    Optional<Integer> bar,
    Optional<Scale> scale,
    PatternNumbers patterns) {
  public static final MapSelection ALL =
      new MapSelection(
          Optional.empty(), Optional.empty(), Optional.empty(), PatternNumbers.FROM_THE_TONIC);

  boolean has(Form.Bar candidate) {
    return section.stream().allMatch(candidate.section().name()::equals)
        && bar.stream().allMatch(b -> b == candidate.number());
  }

  /** Whether the bar on either side of a line is shown. */
  boolean hasLine(Form form, int atBar) {
    return has(form.bar(atBar - 1)) || has(form.bar(atBar));
  }
}

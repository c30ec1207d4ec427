package hingetone.print;

import hingetone.chart.Form;
import hingetone.theory.Scale;
import java.util.Optional;

/**
 * Which part of a map to show.
 *
 * @param section only this section
 * @param bar only this bar of the lap
 * @param scale the shapes of this scale instead of those that fit
 */
public record MapSelection(Optional<String> section, Optional<Integer> bar, Optional<Scale> scale) {
  public static final MapSelection ALL =
      new MapSelection(Optional.empty(), Optional.empty(), Optional.empty());

  boolean has(Form.Bar candidate) {
    return section.stream().allMatch(candidate.section().name()::equals)
        && bar.stream().allMatch(b -> b == candidate.number());
  }

  /** Whether the bar on either side of a line is shown. */
  boolean hasLine(Form form, int atBar) {
    return has(form.bar(atBar - 1)) || has(form.bar(atBar));
  }
}

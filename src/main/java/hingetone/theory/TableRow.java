package hingetone.theory;

import java.util.Arrays;
import java.util.List;

/**
 * A line of a vocabulary's table: {@code name | 1 b3 5 | aliases}, the aliases as may be.
 *
 * @param name the first column
 * @param intervals the degrees of the second
 * @param aliases the third, empty where there is none
 */
record TableRow(String name, List<Interval> intervals, List<String> aliases) {

  /** Reads a line; {@code between} is what stands between two aliases, as a regular expression. */
  static TableRow of(String line, String between) {
    String[] columns = line.split("\\|");
    List<Interval> intervals =
        Arrays.stream(columns[1].strip().split(" +"))
            .map(degree -> Interval.parse(degree).orElseThrow())
            .toList();
    String aliases = columns.length > 2 ? columns[2].strip() : "";
    return new TableRow(
        columns[0].strip(),
        intervals,
        Arrays.stream(aliases.split(between)).filter(alias -> !alias.isEmpty()).toList());
  }
}

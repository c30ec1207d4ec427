package hingetone.reviewing;

import static hingetone.print.Json.object;

import hingetone.print.Json;
import hingetone.review.LineWay;
import hingetone.review.TakeChanges;
import hingetone.review.TakeFigures;
import hingetone.text.Choice;
import hingetone.text.DisplayWidth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Two takes side by side, for people and as JSON.
 *
 * @param first what the earlier is called
 * @param second what the later is called
 * @param changes what changed
 */
public record TakeComparison(String first, String second, TakeChanges changes) {
  /** A table, then a sentence for each thing that is compared. */
  public List<String> lines() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("", first, second));
    row(rows, "notes", f -> "" + f.notes());
    row(rows, "phrases", f -> "" + f.phrases());
    row(rows, "timing, mean", f -> f.timing().tells() ? side(f.timing().meanMs()) : "-");
    row(rows, "timing, spread", f -> f.timing().tells() ? ms(f.timing().spreadMs()) : "-");
    row(rows, "landings in place", f -> f.onPlace() + " of " + f.landings());
    row(rows, "landings, away", f -> f.landings() == 0 ? "-" : ms(f.awayMs()));
    for (LineWay.Kind kind : LineWay.Kind.values()) {
      row(rows, "crossings, " + Choice.word(kind), f -> "" + f.ways().get(kind));
    }
    row(rows, "returns", f -> "" + f.returns());
    row(rows, "with the same ending", f -> "" + f.sameEndings());
    List<String> lines = new ArrayList<>(table(rows));
    lines.add("");
    lines.addAll(changes.story());
    return lines;
  }

  private void row(List<List<String>> rows, String name, Function<TakeFigures, String> figure) {
    rows.add(List.of(name, figure.apply(changes.first()), figure.apply(changes.second())));
  }

  private static String ms(double value) {
    return Math.round(value) + " ms";
  }

  private static String side(double mean) {
    long away = Math.round(mean);
    return away == 0 ? "on the beat" : ms(Math.abs(mean)) + (away > 0 ? " behind" : " ahead");
  }

  private static List<String> table(List<List<String>> rows) {
    int[] widths = new int[3];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], DisplayWidth.of(row.get(i)));
      }
    }
    return rows.stream()
        .map(
            row -> {
              StringBuilder line = new StringBuilder();
              for (int i = 0; i < widths.length; i++) {
                line.append(row.get(i))
                    .append(" ".repeat(widths[i] - DisplayWidth.of(row.get(i)) + 3));
              }
              return line.toString().stripTrailing();
            })
        .toList();
  }

  /** The same as JSON. */
  public String json() {
    List<Map<String, Object>> changed = new ArrayList<>();
    changes
        .lines()
        .forEach(
            (bar, ways) ->
                changed.add(
                    object(
                        "atBar", bar,
                        "first", Choice.word(ways.first()),
                        "second", Choice.word(ways.second()))));
    return Json.text(
        object(
            "version", 1,
            "takes", List.of(first, second),
            "figures", List.of(figures(changes.first()), figures(changes.second())),
            "crossingsChanged", changed,
            "story", changes.story()));
  }

  private static Map<String, Object> figures(TakeFigures figures) {
    Map<String, Object> ways = new LinkedHashMap<>();
    Arrays.stream(LineWay.Kind.values())
        .forEach(kind -> ways.put(Choice.word(kind), figures.ways().get(kind)));
    return object(
        "notes", figures.notes(),
        "phrases", figures.phrases(),
        "meanMs", tenths(figures.timing().meanMs()),
        "spreadMs", tenths(figures.timing().spreadMs()),
        "landings", figures.landings(),
        "landingsInPlace", figures.onPlace(),
        "landingsAwayMs", tenths(figures.awayMs()),
        "crossings", ways,
        "returns", figures.returns(),
        "returnsSameEnding", figures.sameEndings());
  }

  private static double tenths(double value) {
    return Math.rint(value * 10) / 10;
  }
}

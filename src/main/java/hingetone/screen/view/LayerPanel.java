package hingetone.screen.view;

import hingetone.screen.Action;
import hingetone.screen.Menu;
import hingetone.screen.State;
import hingetone.screen.State.Layer;
import hingetone.screen.ViewSettings;
import hingetone.screen.picture.Canvas;
import hingetone.screen.picture.Style;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What lies over the picture: the keys, the menu, waiting for a key to bind. */
final class LayerPanel {
  private static final int KEY_WIDTH = 9;

  /** Columns of the menu before the values. */
  private static final int MENU_WIDTH = 40;

  private LayerPanel() {}

  static void draw(Canvas canvas, State state) {
    if (state.layer() instanceof Layer.Help help) {
      help(canvas, state, help);
    } else if (state.layer() instanceof Layer.Menu menu) {
      menu(canvas, state, menu);
    } else if (state.layer() instanceof Layer.Bind bind) {
      canvas.put(0, 0, "Press the key or pedal for: " + bind.action().words(), Style.STRONG);
      canvas.put(1, 0, "Esc leaves it as it is.", Style.QUIET);
    }
  }

  private record Row(String text, Style style) {}

  private static void help(Canvas canvas, State state, Layer.Help help) {
    List<List<Row>> groups = Action.groups().stream().map(group -> group(group, state)).toList();
    int longest =
        groups.stream().flatMap(List::stream).mapToInt(row -> row.text().length()).max().orElse(0);
    int width = 2 + longest;
    int height = Math.max(1, canvas.rows() - 1);
    List<List<Row>> columns = columns(groups, Math.max(1, (canvas.columns() + 1) / width), height);
    int tallest = columns.stream().mapToInt(List::size).max().orElse(0);
    int first = Math.min(help.first(), Math.max(0, tallest - height));
    for (int column = 0; column < columns.size(); column++) {
      Canvas there = canvas.window(0, column * width, height, width - 1);
      List<Row> rows = columns.get(column);
      for (int i = first; i < Math.min(rows.size(), first + height); i++) {
        there.put(i - first, 1, rows.get(i).text(), rows.get(i).style());
      }
    }
    String last = tallest > height ? "up and down for more, esc back" : "esc back";
    canvas.put(canvas.rows() - 1, 1, canvas.rows() > 1 ? last : "", Style.QUIET);
  }

  /** A heading and what stands under it. */
  private static List<Row> group(String group, State state) {
    List<Row> rows = new ArrayList<>();
    rows.add(new Row(group, Style.STRONG));
    Arrays.stream(Action.values())
        .filter(action -> action.group().equals(group))
        .forEach(action -> rows.add(new Row(line(action, state.settings()), Style.PLAIN)));
    return rows;
  }

  /**
   * Whole groups in so many columns at most, as low as they can be; only where they are taller than
   * the screen all the same does a player have to scroll.
   */
  private static List<List<Row>> columns(List<List<Row>> groups, int most, int height) {
    int all = groups.stream().mapToInt(group -> group.size() + 1).sum();
    for (int limit = Math.min(height, all / most); ; limit++) {
      List<List<Row>> columns = columns(groups, limit);
      if (columns.size() <= most) {
        return columns;
      }
    }
  }

  /** Groups one under another, in a new column where one would reach beyond a height. */
  private static List<List<Row>> columns(List<List<Row>> groups, int height) {
    List<List<Row>> columns = new ArrayList<>();
    for (List<Row> group : groups) {
      List<Row> last = columns.isEmpty() ? List.of() : columns.get(columns.size() - 1);
      if (columns.isEmpty() || last.size() + 1 + group.size() > height) {
        columns.add(new ArrayList<>(group));
      } else {
        last.add(new Row("", Style.PLAIN));
        last.addAll(group);
      }
    }
    return columns;
  }

  private static String line(Action action, ViewSettings settings) {
    String keys = keys(action, settings);
    return keys + " ".repeat(Math.max(1, KEY_WIDTH - keys.length())) + action.words();
  }

  /** The keys and pedals that do an action, the player's own among them. */
  private static String keys(Action action, ViewSettings settings) {
    List<String> keys = new ArrayList<>();
    for (String key : action.keys()) {
      if (Action.ofKey(key, settings).filter(action::equals).isPresent()) {
        keys.add(key);
      }
    }
    settings.bound().entrySet().stream()
        .filter(bound -> bound.getValue() == action)
        .map(Map.Entry::getKey)
        .map(name -> name.startsWith("key ") ? name.substring(4) : name)
        .filter(name -> !keys.contains(name))
        .sorted()
        .forEach(keys::add);
    return keys.stream().collect(Collectors.joining(" "));
  }

  private static void menu(Canvas canvas, State state, Layer.Menu menu) {
    List<Action> lines = Menu.lines();
    int height = Math.max(1, canvas.rows() - 1);
    int first = Math.max(0, Math.min(menu.chosen() - height / 2, lines.size() - height));
    for (int row = 0; row < height && first + row < lines.size(); row++) {
      Action action = lines.get(first + row);
      boolean chosen = first + row == menu.chosen();
      String text = (chosen ? "> " : "  ") + line(action, state.settings()) + " ";
      Style style = chosen ? Style.LIT : Style.PLAIN;
      int column = canvas.put(row, 0, text, style);
      String value = ActionValue.of(action, state);
      canvas.put(row, Math.max(column + 1, MENU_WIDTH), value, style);
    }
    if (canvas.rows() > 1) {
      String last = "enter does it   = gives it a key or pedal   esc back";
      canvas.put(canvas.rows() - 1, 1, last, Style.QUIET);
    }
  }
}

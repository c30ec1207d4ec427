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
    List<Row> rows = new ArrayList<>();
    for (String group : Action.groups()) {
      rows.add(new Row(group, Style.STRONG));
      Arrays.stream(Action.values())
          .filter(action -> action.group().equals(group))
          .forEach(action -> rows.add(new Row(line(action, state.settings()), Style.PLAIN)));
      rows.add(new Row("", Style.PLAIN));
    }
    int height = Math.max(1, canvas.rows() - 1);
    int width = 2 + rows.stream().mapToInt(row -> row.text().length()).max().orElse(0);
    int columns = Math.max(1, (canvas.columns() + 1) / width);
    int needed = Math.max(1, (rows.size() + columns - 1) / columns);
    int used = Math.max(1, Math.min(height, needed + 1));
    int first = Math.min(help.first(), Math.max(0, rows.size() - columns * used));
    for (int i = 0; i < columns * used && first + i < rows.size(); i++) {
      Row row = rows.get(first + i);
      Canvas column = canvas.window(0, i / used * width, used, width - 1);
      column.put(i % used, 1, row.text(), row.style());
    }
    boolean more = columns * used < rows.size();
    String last = more ? "up and down for more, esc back" : "esc back";
    canvas.put(canvas.rows() - 1, 1, canvas.rows() > 1 ? last : "", Style.QUIET);
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

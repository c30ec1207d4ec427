package hingetone.screen;

import hingetone.screen.State.Layer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Moving about in what lies over the picture: the keys and the menu. */
public final class Menu {
  private Menu() {}

  /** The lines of the menu: every action; Enter does it, {@code =} binds a key or pedal to it. */
  public static List<Action> lines() {
    return Arrays.stream(Action.values()).filter(action -> action != Action.MENU).toList();
  }

  /** What a key does while something lies over the picture; empty where it does its usual work. */
  static Optional<Step> struck(State state, Message.Stroke stroke) {
    if (List.of("esc", "tab").contains(stroke.key())) {
      return Optional.of(Step.of(state.withLayer(new Layer.None())));
    }
    if (state.layer() instanceof Layer.Help help) {
      return inHelp(state, help, stroke.key());
    }
    if (state.layer() instanceof Layer.Menu menu) {
      return inMenu(state, menu, stroke);
    }
    return Optional.empty();
  }

  private static Optional<Step> inHelp(State state, Layer.Help help, String key) {
    return switch (key) {
      case "?", "h" -> Optional.of(Step.of(state.withLayer(new Layer.None())));
      case "down", "page down" -> scrolled(state, help.first() + 1);
      case "up", "page up" -> scrolled(state, help.first() - 1);
      default -> Optional.empty();
    };
  }

  private static Optional<Step> scrolled(State state, int first) {
    int last = Action.values().length + 2 * Action.groups().size();
    return Optional.of(
        Step.of(state.withLayer(new Layer.Help(Math.min(last, Math.max(0, first))))));
  }

  private static Optional<Step> inMenu(State state, Layer.Menu menu, Message.Stroke stroke) {
    Action chosen = lines().get(menu.chosen());
    return switch (stroke.key()) {
      case "down" -> moved(state, menu.chosen() + 1);
      case "up" -> moved(state, menu.chosen() - 1);
      case "page down" -> moved(state, Math.min(lines().size() - 1, menu.chosen() + 10));
      case "page up" -> moved(state, Math.max(0, menu.chosen() - 10));
      case "enter" -> Optional.of(Update.act(closed(state), chosen, stroke.nanos()));
      case "=" -> Optional.of(Step.of(state.withLayer(new Layer.Bind(chosen))));
      default -> Optional.empty();
    };
  }

  private static State closed(State state) {
    return state.withLayer(new Layer.None());
  }

  private static Optional<Step> moved(State state, int line) {
    int count = lines().size();
    return Optional.of(Step.of(state.withLayer(new Layer.Menu(Math.floorMod(line, count)))));
  }
}

package hingetone.screen;

import java.util.List;

/**
 * The state after a message, and what is to be done.
 *
 * @param state the new state
 * @param effects what is to be done, in order
 */
public record Step(State state, List<Effect> effects) {
  public Step {
    effects = List.copyOf(effects);
  }

  static Step of(State state, Effect... effects) {
    return new Step(state, List.of(effects));
  }
}

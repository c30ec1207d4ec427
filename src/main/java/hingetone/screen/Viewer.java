package hingetone.screen;

/** Shows what happens: as pictures, or as lines of text. */
public interface Viewer {
  /** A message changed the state; told of every one, in order. */
  default void told(State before, Message message, State after) {}

  /** All that waited has been dealt with: time to show the state. */
  default void show(State state) {}

  /** Show everything anew. */
  default void again(State state) {}

  /** Give the terminal back until the shell wakes the program, then show everything anew. */
  default void stepAside(State state) {}
}

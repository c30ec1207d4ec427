package hingetone.screen;

import hingetone.screen.picture.Size;
import java.util.List;
import java.util.stream.IntStream;

/** States for tests of the terminal. */
public final class States {
  private States() {}

  /** A lap and a little more, every second beat, on a screen of 80 × 24. */
  public static List<State> everyTwoBeats() {
    return IntStream.range(-2, 36)
        .mapToObj(i -> Examples.playing(1, "1").withNow(hingetone.time.Beats.of(2L * i)))
        .toList();
  }

  /** A state on a screen of another size. */
  public static State resized(State state, Size size) {
    return state.withSize(size);
  }
}

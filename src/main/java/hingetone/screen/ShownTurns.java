package hingetone.screen;

import java.util.List;

/** Who speaks when, lap by lap; the same lap always gives the same turns. */
@FunctionalInterface
public interface ShownTurns {
  /** Nothing planned. */
  ShownTurns NONE = lap -> List.of();

  /** The turns whose landing lies in a lap, from 1, in order. */
  List<ShownTurn> ofLap(int lap);
}

package hingetone.screen;

import hingetone.chart.Leave;
import hingetone.time.Position;
import java.util.Optional;

/**
 * One turn in the exchange, as the picture tells it.
 *
 * @param words what it is: {@code statement 3}, {@code reply to 3}, {@code rest}
 * @param kind whose it is
 * @param again whether an earlier statement comes back, with {@code new ending} or {@code same}
 * @param from where it starts, its pickup included
 * @param land where its main note lands; for a rest where it starts
 * @param end where it has ended
 * @param way how it goes over a line where the key changes
 */
public record ShownTurn(
    String words,
    Kind kind,
    Optional<String> again,
    Position from,
    Position land,
    Position end,
    Optional<Leave> way) {
  /** Whose turn it is. */
  public enum Kind {
    PLAYER,
    MACHINE,
    NOBODY
  }

  /** Whether a position lies in it, its start included, its end excluded. */
  public boolean covers(Position position) {
    return position.compareTo(from) >= 0 && position.compareTo(end) < 0;
  }
}

package hingetone.sequencer;

import hingetone.time.Tempo;
import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** The tempo that somebody taps: the mean over the last taps, a long silence starting anew. */
final class TapTempo {
  private static final int FEWEST = 3;
  private static final int MOST = 5;
  private static final long SILENCE_NANOS = 3_000_000_000L;

  private final Deque<Long> taps = new ArrayDeque<>();

  /**
   * A tap.
   *
   * @return the tempo in whole notes a minute, from the third tap on
   */
  Optional<Tempo> tap(long nanos) {
    if (!taps.isEmpty() && nanos - taps.getLast() > SILENCE_NANOS) {
      taps.clear();
    }
    taps.addLast(nanos);
    if (taps.size() > MOST) {
      taps.removeFirst();
    }
    long lasted = taps.getLast() - taps.getFirst();
    if (taps.size() < FEWEST || lasted <= 0) {
      return Optional.empty();
    }
    long bpm = Math.round(60e9 * (taps.size() - 1) / lasted);
    return Optional.of(TempoLine.possible(BigDecimal.valueOf(bpm)));
  }
}

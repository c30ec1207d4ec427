package hingetone.journal;

import java.time.Instant;
import java.util.Optional;

/**
 * One thing that was practised.
 *
 * @param start when it began; with activity and chart it tells entries apart
 * @param chart the title of its chart
 * @param keys the keys it was in, in words: {@code G minor, Bb minor}
 * @param seconds how long was played
 * @param bpm the fastest tempo at which it went, in beats a minute as the chart counts them
 * @param score how much of it went well, 0 to 1: landings on their place, rounds that were clean;
 *     empty where nobody listened
 */
public record LogEntry(
    Instant start,
    Activity activity,
    String chart,
    String keys,
    long seconds,
    Optional<Double> bpm,
    Optional<Double> score) {

  public LogEntry {
    if (seconds < 0 || score.filter(s -> s < 0 || s > 1).isPresent()) {
      throw new IllegalArgumentException("no entry: " + seconds + " s, score " + score);
    }
  }
}
